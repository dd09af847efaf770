//! How things are asked to be printed, in the part of an address behind the question mark.

use crate::desk::print::{Address, Wish};
use crate::desk::{Catalog, LabelSheet, Size};
use crate::web::address::segment;
use barm_domain::plan::Inquiry;
use serde::Deserialize;

/// What is asked for, as it was typed.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize)]
#[serde(default)]
pub(in crate::web) struct Asked {
    pub(super) paper: String,
    pub(super) language: String,
    pub(super) large: String,
    pub(super) labels: String,
    pub(super) start: String,
    pub(super) period: String,
    pub(super) level: String,
    pub(super) address: String,
}

/// Why something asked for cannot be had: the name of its field and a sentence.
pub(super) type Wrong = (&'static str, String);

impl Asked {
    /// What is wished for, with what of it cannot be had left out and named.
    pub(super) fn wish(&self) -> (Wish, Vec<Wrong>) {
        let mut wrong = Vec::new();
        let size = if self.paper == "a4" { Size::A4 } else { Size::Letter };
        let mut wish = Wish::plain(size);
        wish.words = Catalog::of(&self.language);
        wish.large = !self.large.is_empty();
        wish.labels = LabelSheet::of(&self.labels);
        let cells = wish.label_sheet().cells();
        match self.start.trim().parse::<u32>() {
            _ if self.start.trim().is_empty() => {}
            Ok(cell) if (1..=cells).contains(&cell) => wish.start_cell = cell,
            _ => wrong.push(("start", cells.to_string())),
        }
        wish.period = Some(self.period.clone()).filter(|name| !name.is_empty());
        wish.level = Inquiry::ALL.into_iter().find(|level| level.word() == self.level);
        if !self.address.trim().is_empty() {
            match Address::parse(&self.address) {
                Ok(address) => wish.address = Some(address),
                Err(error) => wrong.push(("address", error.to_string())),
            }
        }
        (wish, wrong)
    }

    /// The same again behind the question mark of a link; empty fields are left out.
    pub(super) fn query(&self) -> String {
        let fields = [
            ("paper", &self.paper),
            ("language", &self.language),
            ("large", &self.large),
            ("labels", &self.labels),
            ("start", &self.start),
            ("period", &self.period),
            ("level", &self.level),
            ("address", &self.address),
        ];
        let given = fields.into_iter().filter(|(_, value)| !value.trim().is_empty());
        let pairs: Vec<String> =
            given.map(|(name, value)| format!("{name}={}", segment(value.trim()))).collect();
        if pairs.is_empty() { String::new() } else { format!("?{}", pairs.join("&")) }
    }
}

#[cfg(test)]
mod tests {
    use super::Asked;
    use crate::desk::Size;

    fn asked(change: impl FnOnce(&mut Asked)) -> Asked {
        let mut asked = Asked::default();
        change(&mut asked);
        asked
    }

    #[test]
    fn nothing_asked_for_is_english_on_letter_from_the_first_label() {
        let (wish, wrong) = Asked::default().wish();
        assert!(wrong.is_empty());
        assert_eq!((wish.size, wish.words.code(), wish.start_cell), (Size::Letter, "en", 1));
        assert_eq!(Asked::default().query(), "");
    }

    #[test]
    fn what_is_asked_for_goes_into_every_link() {
        let asked = asked(|asked| {
            asked.paper = "a4".into();
            asked.period = "3/B & late".into();
            asked.start = " 4 ".into();
            asked.address = "https://barm.example".into();
        });
        let (wish, wrong) = asked.wish();
        assert!(wrong.is_empty());
        assert_eq!((wish.size, wish.start_cell), (Size::A4, 4));
        assert_eq!(
            wish.address.map(|address| address.join()).as_deref(),
            Some("https://barm.example/join")
        );
        let link =
            "?paper=a4&start=4&period=3%2FB%20%26%20late&address=https%3A%2F%2Fbarm.example";
        assert_eq!(asked.query(), link);
    }

    #[test]
    fn what_cannot_be_had_is_named_and_left_out() {
        for start in ["0", "31", "four", "-1"] {
            let (wish, wrong) = asked(|asked| asked.start = start.into()).wish();
            assert_eq!(
                (wish.start_cell, wrong),
                (1, vec![("start", "30".to_owned())]),
                "{start}"
            );
        }
        let (wish, wrong) = asked(|asked| asked.address = "barm.example".into()).wish();
        assert!(wish.address.is_none() && wrong.len() == 1 && wrong[0].0 == "address");
        let (_, wrong) = asked(|asked| {
            asked.start = "21".into();
            asked.paper = "a4".into();
        })
        .wish();
        assert!(wrong.is_empty(), "a sheet of A4 has 21");
    }
}
