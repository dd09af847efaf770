//! Differences over classes in words.

use super::{Class, Difference, PassedOver, Side};
use crate::shared::plainly;
use crate::words::tenths;

impl Side {
    /// What is in its bags, with what they do not share with those of another.
    fn says(&self, beside: &Self) -> String {
        let mut rows = crate::shared::Rows::default();
        rows.ingredients.clone_from(&self.ingredients);
        rows.says(&self.row, &beside.row)
    }
}

impl Difference {
    /// The treatment in words.
    pub fn treatment_says(&self) -> String {
        self.treatment.says(&self.reference)
    }

    /// What it is compared with, in words.
    pub fn reference_says(&self) -> String {
        self.reference.says(&self.treatment)
    }

    /// How many classes could tell a difference.
    pub fn told(&self) -> usize {
        self.classes.iter().filter(|found| found.difference.is_some()).count()
    }

    /// What all classes say together, a sentence each.
    pub fn says(&self) -> Vec<String> {
        let (treatment, reference) = (self.treatment_says(), self.reference_says());
        let Some(together) = &self.together else {
            return vec!["No class could tell a difference.".to_owned()];
        };
        let mean = together.mean;
        let ends = format!("{} to {} mm, 95 %", tenths(mean.low), tenths(mean.high));
        let told = self.told();
        let over = if told == 1 {
            "In one class alone".to_owned()
        } else {
            format!("Over {told} classes")
        };
        let size = tenths(mean.estimate.abs());
        let mut says = vec![if mean.low > 0.0 {
            format!("{over}, “{treatment}” rose {size} mm more than “{reference}” ({ends}).")
        } else if mean.high < 0.0 {
            format!("{over}, “{treatment}” rose {size} mm less than “{reference}” ({ends}).")
        } else {
            format!(
                "{over} it cannot be told whether “{treatment}” rises more or less than \
                 “{reference}”: on average {} mm ({ends}).",
                tenths(mean.estimate)
            )
        }];
        says.extend(together.between.as_ref().map(|between| {
            let (tau, most) = (between.tau(), between.tau2_high.max(0.0).sqrt());
            let share = (between.i2 * 100.0).round();
            if tau < 0.05 {
                format!(
                    "Classes differ no more than chance alone would have it; true differences between \
                     them of up to about {} mm cannot be ruled out.",
                    tenths(most)
                )
            } else {
                format!(
                    "Classes truly differ by about {} mm (standard deviation; {share} % of what is seen, \
                     the rest is chance).",
                    tenths(tau)
                )
            }
        }));
        says.extend(match self.next {
            Some((low, high)) => Some(format!(
                "Another class like these would find between {} and {} mm, 19 times in 20.",
                tenths(low),
                tenths(high)
            )),
            None if told == 2 => {
                Some("Two classes say nothing of the next one; a third would.".to_owned())
            }
            None => None,
        });
        if !self.uneven.is_empty() {
            let of = |(what, least, most, unit): &(&str, f64, f64, &str)| {
                format!("{what} {} to {} {unit}", plainly(*least), plainly(*most))
            };
            let listed: Vec<String> = self.uneven.iter().map(of).collect();
            says.push(format!("Recipes are not quite the same: {}.", listed.join(", ")));
        }
        says
    }
}

impl PassedOver {
    /// Why a class does not count, in a sentence.
    pub fn says(&self, classes: &[Class]) -> String {
        let name = |at: usize| classes.get(at).map_or("", |class| class.name.as_str());
        match *self {
            Self::Same { class, other } => format!(
                "{} holds the same data as {} and counts once.",
                name(class),
                name(other)
            ),
            Self::MadeUp { class } => format!(
                "{} is invented and does not count beside classes that are not.",
                name(class)
            ),
        }
    }
}
