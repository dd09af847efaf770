//! Codes to come in with: short, sayable, without letters that look alike.

use super::seats::{Part, end_of_day};
use super::{Doors, chance};
use crate::desk::DeskError;
use crate::desk::room::Room;
use barm_domain::code::check_character;
use barm_store::Code;
use jiff::Timestamp;

/// Letters and digits that are hard to take for one another.
const LETTERS: &[u8] = b"ACDEFHJKMNPRTUWXY34679";
/// Characters of a code before its check character: 113 million codes.
const LENGTH: usize = 6;

/// What a code of a period opens together with a group's code.
pub(super) const PERIOD: &str = "period";

/// The codes of a period, for the teacher.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct PeriodCodes {
    /// The period's own.
    pub(crate) period: String,
    /// Of each group: number and code.
    pub(crate) groups: Vec<(u32, String)>,
    /// The wall page's.
    pub(crate) wall: String,
    /// The walk-round page's.
    pub(crate) round: String,
    /// Aides'; the same in every period.
    pub(crate) aide: String,
}

/// What a code opens.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum CodeRow<'a> {
    /// A period, together with a group's.
    Period(&'a str),
    /// A group, together with its period's.
    Group(&'a str, u32),
    /// A page of a period.
    Page(Part, &'a str),
    /// Aides.
    Aide,
}

impl<'a> CodeRow<'a> {
    const fn word(self) -> &'static str {
        match self {
            Self::Period(_) => PERIOD,
            Self::Group(..) => Part::Group.word(),
            Self::Page(part, _) => part.word(),
            Self::Aide => Part::Aide.word(),
        }
    }

    const fn period(self) -> Option<&'a str> {
        match self {
            Self::Period(period) | Self::Group(period, _) | Self::Page(_, period) => {
                Some(period)
            }
            Self::Aide => None,
        }
    }

    const fn group(self) -> Option<u32> {
        match self {
            Self::Group(_, group) => Some(group),
            _ => None,
        }
    }

    fn is(self, code: &Code) -> bool {
        code.role == self.word()
            && code.period.as_deref() == self.period()
            && code.group == self.group()
    }
}

/// A random code with its check character.
fn draw() -> Result<String, DeskError> {
    loop {
        let mut code = String::new();
        for _ in 0..LENGTH {
            let at = chance::below(LETTERS.len() as u8)?;
            code.push(char::from(LETTERS[usize::from(at)]));
        }
        let check = check_character(&code).filter(|c| LETTERS.contains(&(*c as u8)));
        if let Some(check) = check {
            code.push(check);
            return Ok(code);
        }
    }
}

/// A code as somebody typed it, in the form in which it is kept.
pub(super) fn typed(code: &str) -> String {
    let plain = code.chars().filter(|c| c.is_ascii_alphanumeric()).take(16);
    plain.map(|c| c.to_ascii_uppercase()).collect()
}

impl Doors {
    /// The codes of a period; made where there are none. Waits for the disk.
    pub(crate) fn codes(
        &self,
        room: &Room,
        period: &str,
        now: Timestamp,
    ) -> Result<PeriodCodes, DeskError> {
        let groups = room.read(|scene| {
            let found = scene.plan.periods.iter().find(|one| one.name == period);
            found.map(|found| found.groups)
        });
        let groups = groups.ok_or_else(|| DeskError::NoPeriod { name: period.to_owned() })?;
        let code = |row| self.code(room.id, row, now);
        Ok(PeriodCodes {
            period: code(CodeRow::Period(period))?,
            groups: (1..=groups)
                .map(|group| Ok((group, code(CodeRow::Group(period, group))?)))
                .collect::<Result<_, DeskError>>()?,
            wall: code(CodeRow::Page(Part::Wall, period))?,
            round: code(CodeRow::Page(Part::Round, period))?,
            aide: code(CodeRow::Aide)?,
        })
    }

    fn code(&self, id: i64, row: CodeRow<'_>, now: Timestamp) -> Result<String, DeskError> {
        let known = {
            let inside = self.inside();
            let own = inside.codes.iter().find(|c| c.investigation == id && row.is(c));
            own.map(|own| own.code.clone())
        };
        known.map_or_else(|| self.make(id, row, now), Ok)
    }

    fn make(&self, id: i64, row: CodeRow<'_>, now: Timestamp) -> Result<String, DeskError> {
        loop {
            let code = Code {
                code: draw()?,
                role: row.word().to_owned(),
                investigation: id,
                period: row.period().map(str::to_owned),
                group: row.group(),
                made: now,
                ends: None,
            };
            // One that is taken is drawn again.
            if self.store.keep_code(&code)? {
                self.inside().codes.push(code.clone());
                return Ok(code.code);
            }
        }
    }

    /// Makes another code in place of one; whoever came in with it is put out. Waits.
    pub(crate) fn renew(
        &self,
        room: &Room,
        row: CodeRow<'_>,
        now: Timestamp,
    ) -> Result<String, DeskError> {
        let old = self.code(room.id, row, now)?;
        self.store.drop_code(&old)?;
        self.inside().codes.retain(|code| code.code != old);
        let part = match row {
            CodeRow::Period(_) | CodeRow::Group(..) => Part::Group,
            CodeRow::Page(part, _) => part,
            CodeRow::Aide => Part::Aide,
        };
        self.put_out_all(room.id, part, row.period())?;
        let code = self.make(room.id, row, now)?;
        room.touch(row.period());
        Ok(code)
    }

    /// Opens the codes of a period until the end of the day, whatever the hour.
    pub(crate) fn open_codes(&self, room: &Room, period: &str, now: Timestamp) {
        let zone = room.read(|scene| scene.plan.days.first().map(|day| day.zone.clone()));
        let until = end_of_day(zone.as_deref(), now);
        self.inside().opened.insert((room.id, period.to_owned()), until);
        room.touch(Some(period));
    }

    /// Takes that back.
    pub(crate) fn close_codes(&self, room: &Room, period: &str) {
        self.inside().opened.remove(&(room.id, period.to_owned()));
        room.touch(Some(period));
    }

    /// Until when the codes of a period work; `None` if they do not work now.
    pub(crate) fn codes_work_until(
        &self,
        room: &Room,
        period: &str,
        now: Timestamp,
    ) -> Option<Timestamp> {
        let opened = self.inside().opened.get(&(room.id, period.to_owned())).copied();
        room.read(|scene| super::open_until(scene, period, opened, now))
    }

    /// Whether the teacher opened the codes of any period.
    pub(super) fn any_opened(&self, investigation: i64, now: Timestamp) -> bool {
        let inside = self.inside();
        inside.opened.iter().any(|((id, _), until)| *id == investigation && *until > now)
    }

    /// What a typed code opens among those of these kinds. Looks at every code, whatever is typed.
    pub(super) fn find(&self, typed: &str, words: &[&str]) -> Option<Code> {
        let inside = self.inside();
        let mut found = None;
        for code in &inside.codes {
            let right = chance::same(&code.code, typed);
            if right && words.contains(&code.role.as_str()) {
                found = Some(code.clone());
            }
        }
        found
    }
}

#[cfg(test)]
mod tests {
    use super::{LETTERS, draw, typed};
    use barm_domain::code::check_character;

    #[test]
    fn codes_hold_no_letters_that_look_alike_and_check_themselves() {
        for _ in 0..200 {
            let code = draw().expect("chance");
            assert_eq!(code.len(), 7);
            assert!(code.bytes().all(|byte| LETTERS.contains(&byte)), "{code}");
            let (head, check) = code.split_at(6);
            assert_eq!(check_character(head), check.chars().next(), "{code}");
        }
        for alike in *b"0OQ1IL5S2Z8BVG" {
            assert!(!LETTERS.contains(&alike), "{}", char::from(alike));
        }
    }

    #[test]
    fn codes_may_be_typed_in_small_letters_and_with_gaps() {
        assert_eq!(typed(" km4-7t "), "KM47T");
        assert_eq!(typed(&"x".repeat(1000)).len(), 16);
    }
}
