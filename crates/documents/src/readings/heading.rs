//! What a column holds, told from its heading.

use super::height::LengthUnit;
use super::time::{TimeColumn, When, time};

/// What a column holds.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Column {
    /// Bag codes.
    Bag,
    /// Names of periods, to be compared with the plan's.
    Period,
    /// Times of the readings.
    Time(TimeColumn),
    /// Time of day of each bag's zero reading.
    ZeroTime,
    /// Heights at the time that another column names.
    Height(Option<LengthUnit>),
    /// Heights at the zero reading.
    Zero(Option<LengthUnit>),
    /// Heights at one time.
    At(When, Option<LengthUnit>),
    /// Heights of one bag: the bag of this number in the plan's list.
    OfBag(usize, Option<LengthUnit>),
    /// What a breath meter showed, in percent.
    Meter,
    /// Places in the order of a breath meter.
    Turn,
    /// Units of the row's heights.
    Unit,
    /// Rules by which bags are set aside.
    Rule,
    /// Notes.
    Event,
    /// Nothing that is read.
    Unused,
}

impl Column {
    /// Whether each of its cells may hold a height.
    pub(super) fn holds_heights(&self) -> bool {
        matches!(self, Self::Height(_) | Self::Zero(_) | Self::At(..) | Self::OfBag(..))
    }
}

/// Tells what a column holds; letters' case, accents, blanks and signs do not matter.
///
/// `colons` says what a heading such as `4:00` is.
pub(super) fn column(heading: &str, colons: TimeColumn) -> Column {
    let (words, unit) = words_and_unit(heading);
    let names_seconds = words.last().is_some_and(|w| matches!(w.as_str(), "s" | "sec" | "seg"));
    let without_last = words.split_last().map(|(_, rest)| rest.concat()).unwrap_or_default();
    if names_seconds && is_time(&without_last) {
        return Column::Time(TimeColumn::Seconds);
    }
    if let Some(column) = named(&words.concat(), unit) {
        return column;
    }
    match at(heading, colons, &words, unit) {
        Some(when) => Column::At(when, unit),
        None => Column::Unused,
    }
}

/// Columns named by one of the usual words.
fn named(squeezed: &str, unit: Option<LengthUnit>) -> Option<Column> {
    Some(match squeezed {
        "bag" | "bags" | "bolsa" | "bolsas" | "code" | "codigo" | "bagcode" | "bagid"
        | "bagno" | "bagnumber" | "codeofbag" | "codigodebolsa" | "codigodelabolsa"
        | "label" | "etiqueta" | "baglabel" => Column::Bag,
        "period" | "periodo" | "classperiod" | "per" | "pd" => Column::Period,
        "minute" | "minutes" | "min" | "mins" | "minuto" | "minutos" | "elapsed"
        | "elapsedtime" | "elapsedmin" | "elapsedminutes" | "timemin" | "timemins"
        | "timeminutes" | "timeinmin" | "timeinminutes" | "tmin" | "tiempomin"
        | "tiempominutos" | "tiempoenminutos" | "tiempoenmin" | "minutessincezero"
        | "minutesafterzero" | "transcurrido" | "tiempotranscurrido" => {
            Column::Time(TimeColumn::Minutes)
        }
        "seconds" | "segundos" | "timeseconds" | "timeinseconds" => {
            Column::Time(TimeColumn::Seconds)
        }
        "clock" | "clocktime" | "timeofday" | "reloj" | "horadelreloj" | "horadeldia" => {
            Column::Time(TimeColumn::Clock)
        }
        "zerotime" | "timeofzero" | "starttime" | "zeroat" | "sealedat" | "horadecero"
        | "horadelcero" | "horainicial" | "horadeinicio" => Column::ZeroTime,
        "zero" | "cero" | "zeroreading" | "zeroheight" | "heightatzero" | "lecturacero"
        | "lecturadecero" | "alturacero" | "alturainicial" | "startheight"
        | "initialheight" | "startingheight" | "0zero" | "zero0" | "zerominute"
        | "minutezero" => Column::Zero(unit),
        "" if unit.is_some() => Column::Height(unit),
        "height" | "heights" | "altura" | "alturas" | "cardheight" | "heightofcard"
        | "alturadelatarjeta" | "alturatarjeta" | "alturadetarjeta" | "reading"
        | "readings" | "lectura" | "lecturas" | "ruler" | "rulerreading" => {
            Column::Height(unit)
        }
        "meter" | "breathmeter" | "meterpercent" | "medidor" | "alcoholimetro" => Column::Meter,
        "turn" | "turns" | "push" | "turno" => Column::Turn,
        "unit" | "units" | "unidad" | "unidades" => Column::Unit,
        "setaside" | "setasideby" | "setasiderule" | "rule" | "excluded" | "excludedby"
        | "exclude" | "apartada" | "apartadapor" | "apartar" | "excluida" | "excluidapor"
        | "regla" | "norma" => Column::Rule,
        "note" | "notes" | "nota" | "notas" | "event" | "events" | "evento" | "eventos"
        | "comment" | "comments" | "comentario" | "comentarios" | "remark" | "remarks"
        | "observation" | "observations" | "observacion" | "observaciones" => Column::Event,
        squeezed if is_time(squeezed) => Column::Time(TimeColumn::Either),
        _ => return None,
    })
}

fn is_time(squeezed: &str) -> bool {
    matches!(squeezed, "time" | "times" | "hora" | "horas" | "tiempo" | "t" | "when" | "cuando")
}

/// The time that a heading such as `4 min`, `t=8`, `8:31` or `Height at 4 min` names.
fn at(
    heading: &str,
    colons: TimeColumn,
    words: &[String],
    unit: Option<LengthUnit>,
) -> Option<When> {
    const BESIDE: [&str; 14] = [
        "height", "altura", "card", "tarjeta", "reading", "lectura", "at", "a", "los", "las",
        "after", "de", "la", "en",
    ];
    if let Some(when) = time(heading, colons) {
        return Some(when);
    }
    let bare: Vec<&str> = words.iter().map(String::as_str).collect();
    let told: Vec<&str> = bare.iter().copied().filter(|w| !BESIDE.contains(w)).collect();
    let joined = told.join(" ");
    let bare_number = told.len() == 1 && joined.bytes().all(|b| b.is_ascii_digit());
    // "Height 2" may be the second of two readings, so a number beside other words needs its
    // minutes; a unit of length is no such word.
    if bare_number && told.len() != bare.len() {
        return None;
    }
    let stripped = match joined.strip_prefix("t ").or_else(|| joined.strip_prefix('t')) {
        Some(number) if number.starts_with(|c: char| c.is_ascii_digit()) => number,
        _ if unit.is_some() || told.len() < bare.len() || told.len() > 1 || bare_number => {
            &joined
        }
        _ => return None,
    };
    time(stripped, colons)
}

/// The words of a heading in small letters without accents, and the unit of length among them.
///
/// Points, commas and colons between two digits and the marks for minutes stay.
fn words_and_unit(heading: &str) -> (Vec<String>, Option<LengthUnit>) {
    let signs: Vec<char> = heading.chars().filter_map(without_accent).collect();
    let digit =
        |at: Option<usize>| at.and_then(|at| signs.get(at)).is_some_and(char::is_ascii_digit);
    let kept: String = signs
        .iter()
        .enumerate()
        .map(|(at, &sign)| match sign {
            '.' | ',' | ':' if digit(at.checked_sub(1)) && digit(Some(at + 1)) => sign,
            sign if sign.is_alphanumeric() || "\"″'′".contains(sign) => sign,
            _ => ' ',
        })
        .collect();
    let lower = kept.to_lowercase();
    let mut words: Vec<String> = lower.split_whitespace().map(str::to_owned).collect();
    let last_unit = words.iter().rposition(|word| LengthUnit::named(word).is_some());
    let mut unit = None;
    if let Some(place) = last_unit {
        unit = LengthUnit::named(&words[place]);
        words.remove(place);
        // What is left of "height in mm" or "altura en mm".
        if place > 0 && matches!(words[place - 1].as_str(), "in" | "en") {
            words.remove(place - 1);
        }
    } else if let Some(last) = words.last_mut() {
        for ending in ["mm", "cm"] {
            if let Some(word) = last.strip_suffix(ending).filter(|word| word.len() > 3) {
                unit = LengthUnit::named(ending);
                *last = word.to_owned();
                break;
            }
        }
    }
    (words, unit)
}

/// A letter without its accent; nothing for an accent that stands alone.
fn without_accent(sign: char) -> Option<char> {
    Some(match sign {
        '\u{0300}'..='\u{036F}' => return None,
        'á' | 'à' | 'Á' | 'À' => 'a',
        'é' | 'è' | 'É' | 'È' => 'e',
        'í' | 'ì' | 'Í' | 'Ì' => 'i',
        'ó' | 'ò' | 'Ó' | 'Ò' => 'o',
        'ú' | 'ù' | 'ü' | 'Ú' | 'Ù' | 'Ü' => 'u',
        'ñ' | 'Ñ' => 'n',
        other => other,
    })
}

#[cfg(test)]
mod tests {
    use super::Column;
    use crate::readings::height::LengthUnit;
    use crate::readings::time::{TimeColumn, When};

    const MILLIMETER: LengthUnit = LengthUnit { mm: 1.0 };
    const CENTIMETER: LengthUnit = LengthUnit { mm: 10.0 };
    const INCH: LengthUnit = LengthUnit { mm: 25.4 };

    fn column(heading: &str) -> Column {
        super::column(heading, TimeColumn::Either)
    }

    #[test]
    fn headings_are_matched_loosely_in_english_and_spanish() {
        let rows = [
            ("Bag", Column::Bag),
            (" bag_code ", Column::Bag),
            ("Código", Column::Bag),
            ("BOLSA", Column::Bag),
            ("Period", Column::Period),
            ("minuto", Column::Time(TimeColumn::Minutes)),
            ("Time (min)", Column::Time(TimeColumn::Minutes)),
            ("time (s)", Column::Time(TimeColumn::Seconds)),
            ("Hora", Column::Time(TimeColumn::Either)),
            ("Clock time", Column::Time(TimeColumn::Clock)),
            ("Zero time", Column::ZeroTime),
            ("Height", Column::Height(None)),
            ("card height (in)", Column::Height(Some(INCH))),
            ("height in mm", Column::Height(Some(MILLIMETER))),
            ("height_cm", Column::Height(Some(CENTIMETER))),
            ("Heightmm", Column::Height(Some(MILLIMETER))),
            ("Altura en mm.", Column::Height(Some(MILLIMETER))),
            ("mm", Column::Height(Some(MILLIMETER))),
            ("Zero (mm)", Column::Zero(Some(MILLIMETER))),
            ("Set aside", Column::Rule),
            ("Notas", Column::Event),
            ("Unit", Column::Unit),
            ("Meter (%)", Column::Meter),
            ("Alcoholímetro", Column::Meter),
            ("Turn", Column::Turn),
            ("Temperature", Column::Unused),
            ("Group", Column::Unused),
            ("Group 3", Column::Unused),
            ("Height 2", Column::Unused),
            ("", Column::Unused),
        ];
        for (heading, expected) in rows {
            assert_eq!(column(heading), expected, "{heading}");
        }
    }

    #[test]
    fn a_heading_may_name_a_minute() {
        let rows = [
            ("0", 0.0, None),
            ("4", 4.0, None),
            ("2,5 min", 2.5, None),
            ("4 min", 4.0, None),
            ("t=8", 8.0, None),
            ("t8", 8.0, None),
            ("min 12", 12.0, None),
            ("Minute 12", 12.0, None),
            ("12'", 12.0, None),
            ("4 min (in)", 4.0, Some(INCH)),
            ("height at 4 min (mm)", 4.0, Some(MILLIMETER)),
            ("Altura a los 4 min", 4.0, None),
            ("mm at 4 min", 4.0, Some(MILLIMETER)),
            ("4 (mm)", 4.0, Some(MILLIMETER)),
        ];
        for (heading, minute, unit) in rows {
            assert_eq!(column(heading), Column::At(When::Minute(minute), unit), "{heading}");
        }
        assert!(matches!(column("8:31"), Column::At(When::Clock(_), None)));
    }
}
