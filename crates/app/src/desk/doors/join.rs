//! Coming in with codes.

use super::open::pages_open;
use super::seats::{Part, Seat, end_of_day};
use super::tries::Counted;
use super::{Token, codes};
use crate::desk::DeskError;
use crate::desk::room::Shelf;
use barm_domain::code::BagCode;
use jiff::Timestamp;
use std::net::IpAddr;

/// Where somebody knocks.
#[derive(Debug, Clone)]
pub(crate) struct From<'a> {
    /// The random cookie of the device.
    pub(crate) device: &'a str,
}

/// What somebody brings.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Key<'a> {
    /// A period's code and a group's code, or the code on the label of one of its bags.
    Group {
        /// The period's.
        period: &'a str,
        /// The group's, or a bag's.
        group: &'a str,
    },
    /// The code of a page: wall, walk-round, aide.
    Page(&'a str),
}

/// Why nobody was let in.
#[derive(Debug, thiserror::Error)]
pub(crate) enum NotJoined {
    /// Some code is wrong, or does not work now; which one is not said.
    #[error("these codes do not open anything now; read them again, or ask your teacher")]
    Wrong {
        /// Whether so many were wrong, of whatever devices, that the next is judged later.
        flood: bool,
    },
    /// There were too many wrong ones from this device.
    #[error("too many wrong codes; wait {0} seconds")]
    Wait(u32),
    /// Something is wrong with the store.
    #[error(transparent)]
    Desk(#[from] DeskError),
}

/// The part of an address that a building shares.
pub(crate) fn bucket(address: Option<IpAddr>) -> String {
    match address.map(|address| address.to_canonical()) {
        None => "unknown".to_owned(),
        Some(IpAddr::V4(four)) => four.to_string(),
        // A network of IPv6 hands out whole blocks of addresses to one device.
        Some(IpAddr::V6(six)) => {
            let parts = six.segments();
            format!("{:x}:{:x}:{:x}:{:x}", parts[0], parts[1], parts[2], parts[3])
        }
    }
}

impl Shelf {
    /// Lets somebody in who brings the right codes. Waits for the disk.
    ///
    /// Only its own wrong codes keep a device waiting. Those of all others make the answer to
    /// wrong ones slow, and never the right ones wrong: whoever invents a device for each guess
    /// must not lock a class out.
    pub(crate) fn join(
        &self,
        from: &From<'_>,
        key: Key<'_>,
        now: Timestamp,
    ) -> Result<(Token, Seat), NotJoined> {
        let doors = &self.doors;
        let device = Counted::Device(from.device.to_owned());
        if let Some(wait) = doors.tries().wait(&device, now) {
            return Err(NotJoined::Wait(wait));
        }
        let first = match key {
            Key::Group { period, .. } => codes::typed(period),
            Key::Page(code) => codes::typed(code),
        };
        let seat = match key {
            Key::Group { group, .. } => self.group_seat(&first, group, now)?,
            Key::Page(_) => self.page_seat(&first, now)?,
        };
        let Some(seat) = seat else {
            let ours = doors.find(&first, &[codes::PERIOD]).is_some();
            let all = [Some(Counted::Everybody), ours.then_some(Counted::Code(first))];
            let mut tries = doors.tries();
            let flood = all.iter().flatten().any(|who| tries.wait(who, now).is_some());
            for who in all.into_iter().flatten().chain([device]) {
                tries.wrong(who, now);
            }
            return Err(NotJoined::Wrong { flood });
        };
        doors.tries().right(&device);
        Ok((doors.seat(&seat, now)?, seat))
    }

    fn group_seat(
        &self,
        period: &str,
        group: &str,
        now: Timestamp,
    ) -> Result<Option<Seat>, DeskError> {
        let hour = self.doors.find(period, &[codes::PERIOD]);
        let own = self.doors.find(&codes::typed(group), &[Part::Group.word()]);
        let bag: Option<BagCode> = group.parse().ok();
        let Some(hour) = hour else { return Ok(None) };
        let room = self.room(hour.investigation, now)?;
        let Some(period) = hour.period else { return Ok(None) };
        let open = self.doors.codes_work_until(&room, &period, now).is_some();
        let by_code = own
            .filter(|own| own.investigation == room.id && own.period.as_ref() == Some(&period))
            .and_then(|own| own.group);
        let (by_label, zone) = room.read(|scene| {
            let home = bag.and_then(|bag| scene.ledger.known().bags.get(&bag));
            let home = home.filter(|home| home.period == period && home.group > 0);
            (home.map(|home| home.group), zone_of(scene, &period))
        });
        let Some(group) = by_code.or(by_label).filter(|_| open) else { return Ok(None) };
        Ok(Some(Seat {
            part: Part::Group,
            investigation: Some(room.id),
            period: Some(period),
            group: Some(group),
            ends: end_of_day(zone.as_deref(), now),
        }))
    }

    fn page_seat(&self, typed: &str, now: Timestamp) -> Result<Option<Seat>, DeskError> {
        let pages = [Part::Wall, Part::Round, Part::Aide];
        let found = self.doors.find(typed, &pages.map(Part::word));
        let Some(code) = found else { return Ok(None) };
        let part = pages.into_iter().find(|part| part.word() == code.role);
        let room = self.room(code.investigation, now)?;
        let (zone, today) = room.read(|scene| {
            let zone = match &code.period {
                Some(period) => zone_of(scene, period),
                None => scene.plan.days.first().map(|day| day.zone.clone()),
            };
            (zone, pages_open(scene, code.period.as_deref(), now))
        });
        let opened = || match &code.period {
            Some(period) => self.doors.codes_work_until(&room, period, now).is_some(),
            None => self.doors.any_opened(room.id, now),
        };
        if !today && !opened() {
            return Ok(None);
        }
        Ok(part.map(|part| Seat {
            part,
            investigation: Some(room.id),
            period: code.period,
            group: None,
            ends: end_of_day(zone.as_deref(), now),
        }))
    }
}

fn zone_of(scene: &crate::desk::room::Scene<'_>, period: &str) -> Option<String> {
    let period = scene.plan.periods.iter().find(|one| one.name == period)?;
    let day = scene.plan.days.iter().find(|day| day.name == period.day)?;
    Some(day.zone.clone())
}
