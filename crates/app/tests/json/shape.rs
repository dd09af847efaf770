//! Reading a JSON answer against a promised shape.

use serde_json::Value;

/// Whether a value is what was promised.
pub(crate) type Kind = fn(&Value) -> bool;

pub(crate) const TEXT: Kind = Value::is_string;
pub(crate) const FLAG: Kind = Value::is_boolean;
pub(crate) const NUMBER: Kind = Value::is_number;
pub(crate) const COUNT: Kind = Value::is_u64;
pub(crate) const LIST: Kind = Value::is_array;
pub(crate) const TEXT_OR_NULL: Kind = |value| value.is_string() || value.is_null();
pub(crate) const NUMBER_OR_NULL: Kind = |value| value.is_number() || value.is_null();
pub(crate) const TEXTS: Kind = |value| value.as_array().is_some_and(|all| all.iter().all(TEXT));
pub(crate) const NUMBERS: Kind =
    |value| value.as_array().is_some_and(|all| all.iter().all(NUMBER));
pub(crate) const OBJECT: Kind = Value::is_object;
pub(crate) const OBJECT_OR_NULL: Kind = |value| value.is_object() || value.is_null();

/// Fails unless the object has exactly these keys, each of its kind.
pub(crate) fn shaped(what: &str, object: &Value, promised: &[(&str, Kind)]) {
    let fields = object.as_object().unwrap_or_else(|| panic!("{what} is no object: {object}"));
    for (key, kind) in promised {
        let value = fields.get(*key).unwrap_or_else(|| panic!("{what} has no “{key}”"));
        assert!(kind(value), "{what}: “{key}” is {value}");
    }
    for key in fields.keys() {
        let known = promised.iter().any(|(name, _)| name == key);
        assert!(known, "{what}: “{key}” is promised nowhere");
    }
}

pub(crate) fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    let list = value[key].as_array().unwrap_or_else(|| panic!("“{key}” is no list"));
    assert!(!list.is_empty(), "“{key}” is empty on the invented plan");
    list
}

pub(crate) fn text<'a>(value: &'a Value, key: &str) -> &'a str {
    value[key].as_str().unwrap_or_else(|| panic!("“{key}” is no text"))
}

pub(crate) fn number(value: &Value, key: &str) -> f64 {
    value[key].as_f64().unwrap_or_else(|| panic!("“{key}” is no number"))
}

pub(crate) fn numbers(value: &Value) -> Vec<f64> {
    let all = value.as_array().expect("a list of numbers");
    all.iter().map(|one| one.as_f64().expect("a number")).collect()
}
