//! The icons on paper for students, drawn for this program: a box of 24 units, a pen of 1.75, no
//! ground; what stands, stands on the bench.

/// An icon: its name and its file.
macro_rules! icon {
    ($name:literal) => {
        ($name, include_str!(concat!("icons/", $name, ".svg")))
    };
}

/// Every icon by its name.
pub(crate) const ICONS: [(&str, &str); 14] = [
    icon!("bag"),
    icon!("card"),
    icon!("clock"),
    icon!("dropper"),
    icon!("goggles"),
    icon!("hand-off"),
    icon!("label"),
    icon!("meter"),
    icon!("pencil"),
    icon!("ruler"),
    icon!("spoon"),
    icon!("thermometer"),
    icon!("vent"),
    icon!("yeast"),
];
