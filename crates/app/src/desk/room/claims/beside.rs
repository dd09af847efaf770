//! A fact about a claim in the teacher's words.

use crate::desk::{Wording, say, voice};
use barm_domain::claim::{Agrees, Fact, Found};
use barm_domain::plan::Plan;
use barm_domain::result::Measured;

/// A fact as a sentence.
pub(crate) fn says(w: Wording, plan: &Plan, fact: &Fact) -> String {
    match fact {
        Fact::Class { agrees, verdict, difference_mm } => {
            let verdict = voice(plan).verdict(*verdict);
            let Some(size) = difference_mm.as_ref().map(|class| interval(w, class)) else {
                return match agrees {
                    Agrees::Yes => say!(w, "claims-class-bare-yes", verdict = verdict),
                    Agrees::No => say!(w, "claims-class-bare-no", verdict = verdict),
                    Agrees::Open => say!(w, "claims-class-bare-open", verdict = verdict),
                };
            };
            match agrees {
                Agrees::Yes => say!(w, "claims-class-yes", verdict = verdict, size = size),
                Agrees::No => say!(w, "claims-class-no", verdict = verdict, size = size),
                Agrees::Open => say!(w, "claims-class-open", verdict = verdict, size = size),
            }
        }
        Fact::Own { agrees, difference_mm, bags } => {
            let (own, beside) = (bags.0.to_string(), bags.1.to_string());
            let size = signed(*difference_mm);
            if *agrees == Agrees::Yes {
                say!(w, "claims-own-yes", size = size, bags = own, beside = beside)
            } else {
                say!(w, "claims-own-no", size = size, bags = own, beside = beside)
            }
        }
        Fact::OwnOneSided { bags } => {
            say!(
                w,
                "claims-own-one-sided",
                bags = bags.0.to_string(),
                beside = bags.1.to_string()
            )
        }
        Fact::Size { claimed_mm, class_mm, within } => {
            let (claimed, class) = (plain(*claimed_mm), interval(w, class_mm));
            if *within {
                say!(w, "claims-size-within", claimed = claimed, size = class)
            } else {
                say!(w, "claims-size-beyond", claimed = claimed, size = class)
            }
        }
        Fact::Number { length, found } => {
            let number = &length.written;
            match found {
                Found::Rise { bag, minute } => say!(
                    w,
                    "claims-number-rise",
                    number = number,
                    bag = bag,
                    minute = whole(*minute)
                ),
                Found::Height { bag, minute } => say!(
                    w,
                    "claims-number-height",
                    number = number,
                    bag = bag,
                    minute = whole(*minute)
                ),
                Found::Mean { treatment } => {
                    say!(w, "claims-number-mean", number = number, treatment = treatment)
                }
                Found::Difference => say!(w, "claims-number-difference", number = number),
                Found::Nowhere => say!(w, "claims-number-nowhere", number = number),
            }
        }
        Fact::SetAside { bag, rule } => say!(w, "claims-set-aside", bag = bag, rule = rule),
    }
}

/// "+6.1 mm (+3.9 to +8.3)".
fn interval(w: Wording, measured: &Measured) -> String {
    let bare = |mm: f64| signed(mm).trim_end_matches(" mm").to_owned();
    let (low, high) = (bare(measured.low), bare(measured.high));
    say!(w, "claims-interval", value = signed(measured.value), low = low, high = high)
}

/// "+6.1 mm", with a true minus sign.
fn signed(mm: f64) -> String {
    let sign = if mm < -0.05 { "−" } else { "+" };
    format!("{sign}{:.1} mm", mm.abs())
}

fn plain(mm: f64) -> String {
    format!("{mm:.1} mm")
}

fn whole(minute: f64) -> String {
    format!("{minute:.0}")
}

#[cfg(test)]
mod tests {
    use super::{interval, signed};
    use crate::desk::Wording;
    use barm_domain::result::Measured;

    #[test]
    fn a_difference_has_its_sign_and_its_unit_once() {
        let measured = Measured { value: -6.14, low: -8.3, high: 0.02 };
        assert_eq!(interval(Wording::english(), &measured), "−6.1 mm (−8.3 to +0.0)");
        assert_eq!(signed(-0.04), "+0.0 mm");
    }
}
