//! Finding one's way in a plan.

use super::{CONTROLS, Day, Difference, Inquiry, Period, Plan, Question, Recipe, Treatment};

impl Recipe {
    /// The recipe with what a treatment changes.
    #[must_use]
    pub fn with(&self, difference: &Difference) -> Self {
        let mut recipe = self.clone();
        let changed = difference.clone();
        if let Some(bag) = changed.bag {
            recipe.bag = bag;
        }
        if let Some(card) = changed.card {
            recipe.card = card;
        }
        if let Some(water) = changed.water {
            recipe.water = water;
        }
        if let Some(celsius) = changed.water_celsius {
            recipe.water_celsius = celsius;
        }
        if let Some(yeast) = changed.yeast {
            recipe.yeast = yeast;
        }
        if let Some(amount) = changed.yeast_amount {
            recipe.yeast_amount = amount;
        }
        if let Some(food) = changed.food {
            recipe.food = food;
        }
        if let Some(amount) = changed.food_amount {
            recipe.food_amount = Some(amount);
        }
        if let Some(enzyme) = changed.enzyme {
            recipe.enzyme = enzyme;
        }
        if let Some(amount) = changed.enzyme_amount {
            recipe.enzyme_amount = Some(amount);
        }
        if let Some(extras) = changed.extras {
            recipe.extras = extras;
        }
        if let Some(lies) = changed.lies {
            recipe.lies = lies;
        }
        recipe
    }
}

impl Question {
    /// Name of the treatment that `treatment` is compared with in this question, if any.
    pub fn reference_of<'a>(&'a self, treatment: &'a Treatment) -> Option<&'a str> {
        let beside = treatment.beside.as_deref().or(self.reference.as_deref())?;
        (beside != treatment.name).then_some(beside)
    }
}

impl Plan {
    /// Every treatment of the plan with the id of the question it belongs to; shared controls
    /// come last, under [`CONTROLS`].
    pub fn treatments(&self) -> impl Iterator<Item = (&str, &Treatment)> {
        let own = self
            .questions
            .iter()
            .flat_map(|question| question.treatments.iter().map(|t| (question.id.as_str(), t)));
        own.chain(self.controls.iter().map(|control| (CONTROLS, &control.treatment)))
    }

    /// The treatment of that name.
    pub fn treatment(&self, name: &str) -> Option<&Treatment> {
        self.treatments().map(|(_, treatment)| treatment).find(|t| t.name == name)
    }

    /// The treatments that answer a question: its own, those it uses from elsewhere, and its
    /// references, each once.
    pub fn answering<'a>(&'a self, question: &'a Question) -> Vec<&'a Treatment> {
        let mut names: Vec<&str> =
            question.treatments.iter().map(|t| t.name.as_str()).collect();
        names.extend(question.uses.iter().map(String::as_str));
        names.extend(question.reference.as_deref());
        names.extend(question.treatments.iter().filter_map(|t| t.beside.as_deref()));
        let mut found: Vec<&Treatment> = Vec::new();
        for name in names {
            if found.iter().all(|t| t.name != name) {
                found.extend(self.treatment(name));
            }
        }
        found
    }

    /// What a treatment is compared with in that question, if anything: treatments that the
    /// question takes in from elsewhere are compared with its reference too, unless they are
    /// there only as references.
    pub fn beside<'a>(
        &'a self,
        question: &'a Question,
        treatment: &'a Treatment,
    ) -> Option<&'a str> {
        let own = question.treatments.iter().any(|t| t.name == treatment.name);
        if own {
            return question.reference_of(treatment);
        }
        let reference = question.reference.as_deref()?;
        let compared = question.uses.contains(&treatment.name) && reference != treatment.name;
        compared.then_some(reference)
    }

    /// Whether other treatments of that question are compared with this one.
    pub fn is_reference(&self, question: &Question, name: &str) -> bool {
        question.reference.as_deref() == Some(name)
            || question.treatments.iter().any(|t| t.beside.as_deref() == Some(name))
    }

    /// The recipe of a treatment.
    pub fn recipe(&self, treatment: &Treatment) -> Recipe {
        self.base.with(&treatment.difference)
    }

    /// Whether a treatment is a shared control.
    pub fn is_control(&self, name: &str) -> bool {
        self.controls.iter().any(|control| control.treatment.name == name)
    }

    /// The day of that name.
    pub fn day(&self, name: &str) -> Option<&Day> {
        self.days.iter().find(|day| day.name == name)
    }

    /// The period of that name.
    pub fn period(&self, name: &str) -> Option<&Period> {
        self.periods.iter().find(|period| period.name == name)
    }

    /// How much is left to a group: its own setting, else its period's, else the plan's.
    pub fn inquiry_of(&self, period: &Period, group: u32) -> Inquiry {
        let own = |one: &&super::GroupSetting| one.period == period.name && one.group == group;
        let setting = self.group_settings.iter().find(own);
        setting.and_then(|one| one.inquiry).or(period.inquiry).unwrap_or(self.inquiry)
    }

    /// The last reading of a period in whole minutes after the zero reading: the last multiple
    /// of the reading interval before clearing starts; 0 if there is no time for one.
    pub fn last_reading_min(&self, period: &Period) -> u32 {
        let window = period.length_min - self.timing.mixing_min - self.timing.clearing_min;
        if window <= 0.0 || self.timing.interval_min <= 0.0 {
            return 0;
        }
        let readings = (window / self.timing.interval_min + 1e-9).floor();
        (readings * self.timing.interval_min) as u32
    }

    /// The last reading that every period reaches, in whole minutes after the zero reading.
    pub fn common_last_reading_min(&self) -> u32 {
        self.periods.iter().map(|period| self.last_reading_min(period)).min().unwrap_or(0)
    }
}
