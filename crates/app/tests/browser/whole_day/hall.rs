//! The program with its clock, seen from the room: addresses, codes, and the plug.

use crate::browser::Browser;
use crate::looks::PASSPHRASE;
use crate::school::{GROUP, School, Served};
use barm_domain::record::Entry;
use jiff::{SignedDuration, Timestamp};
use std::net::UdpSocket;
use std::time::Instant;

pub(super) use crate::school::PERIOD;

/// Two minutes before the bell of period 4 on the invented day.
const BEFORE_BELL: &str = "2027-03-09T17:38:00Z";

/// No device has this number at first.
const OTHER: u32 = 90;

/// A class room with the program in it.
pub(super) struct Hall {
    school: School,
    served: Option<Served>,
    port: u16,
    /// What the clock showed, and when.
    set: (Timestamp, Instant),
    speed: f64,
    groups: u32,
    /// Code of each group.
    pub(super) group_codes: Vec<String>,
    pub(super) wall_code: String,
    /// This computer's address in its network, if it is in one.
    lan: Option<String>,
}

impl Hall {
    /// Opens the doors for so many groups; the clock runs so many times as fast as a true one.
    pub(super) fn open(groups: u32, speed: usize) -> Self {
        let school = School::new();
        let of = school.investigation;
        let words = ["HEAT", "", "NEAR", "CHAT", "PACE", "TAME", "RACK", "WARM"];
        let code = |(group, word): (u32, &str)| match group {
            GROUP => school.group_code.clone(),
            group => school.code(of, word, "group", Some(group)),
        };
        let group_codes = (1..=groups).zip(words).map(code).collect();
        let wall_code = school.code(of, "FARMED", "wall", None);
        let speed = speed as f64;
        let bell = BEFORE_BELL.parse().expect("a moment");
        let mut hall = Self {
            school,
            served: None,
            port: 0,
            set: (bell, Instant::now()),
            speed,
            groups,
            group_codes,
            wall_code,
            lan: own_address(),
        };
        hall.come_back();
        hall
    }

    /// Starts the program, at any free port, with its clock going on.
    pub(super) fn come_back(&mut self) {
        let now = self.now();
        let mut more =
            vec!["--lan".to_owned(), "--clock".to_owned(), format!("{now}@{}", self.speed)];
        for group in (0..=self.groups).chain([OTHER]) {
            more.extend(["--name".to_owned(), self.loopback(group)]);
        }
        let served = self.school.serve_with(0, &more);
        self.set = (now, Instant::now());
        assert_ne!(served.port, self.port, "it is at another port");
        self.port = served.port;
        self.served = Some(served);
    }

    /// Pulls the plug.
    pub(super) fn stop(&mut self) {
        self.served.take().expect("it runs").stop();
    }

    /// The time in the room.
    fn now(&self) -> Timestamp {
        let (moment, set) = self.set;
        moment + SignedDuration::from_secs_f64(set.elapsed().as_secs_f64() * self.speed)
    }

    /// The time in the room, in minutes of some hour.
    pub(super) fn minute(&self) -> f64 {
        self.now().as_millisecond() as f64 / 60_000.0
    }

    /// The code of the period.
    pub(super) fn period_code(&self) -> &str {
        &self.school.period_code
    }

    /// An address of the program by a name of this computer.
    pub(super) fn at(&self, host: &str, path: &str) -> String {
        format!("http://{host}:{}{path}", self.port)
    }

    /// Host and port.
    pub(super) fn place(&self, host: &str) -> String {
        format!("{host}:{}", self.port)
    }

    /// A name of this computer that no other device uses: browsers keep cookies by name.
    fn loopback(&self, device: u32) -> String {
        format!("device{device}.localhost")
    }

    /// Whether other devices could reach it.
    pub(super) fn is_in_a_network(&self) -> bool {
        self.lan.is_some()
    }

    /// A name by which nobody has called yet.
    pub(super) fn other_name(&self) -> String {
        self.loopback(OTHER)
    }

    /// The name by which a group's device calls: the first comes through the network, the others
    /// over loopback. Device 0 is a second one of some group.
    pub(super) fn host(&self, device: u32) -> String {
        let far = self.lan.clone().filter(|_| device == 1);
        far.unwrap_or_else(|| self.loopback(device))
    }

    /// Chooses a passphrase.
    pub(super) fn sign_in(&self, browser: &Browser) {
        browser.open(&self.at("localhost", "/teacher"));
        browser.run(&format!(
            "for (const field of document.querySelectorAll('[type=password]')) field.value = '{PASSPHRASE}';"
        ));
        browser.click("form[action='/teacher/first'] button");
        browser.until("return location.pathname === '/shelf';");
    }

    /// Opens a page by its code.
    pub(super) fn come_in(&self, browser: &Browser, code: &str) {
        browser.open(&self.at("localhost", "/join"));
        browser.run(&format!("document.getElementById('code').value = '{code}';"));
        browser.click("details.other button[type=submit]");
        browser.until("return document.querySelector('main.wall') !== null;");
    }

    /// Ends it and gives the record.
    pub(super) fn ended(mut self) -> Vec<Entry> {
        self.stop();
        self.school.record()
    }
}

/// The address under which others would reach this computer. Nothing is sent: the system only says
/// which way it would go (the other end is of RFC 5737, for documents).
fn own_address() -> Option<String> {
    let socket = UdpSocket::bind(("0.0.0.0", 0)).ok()?;
    socket.connect(("198.51.100.1", 9)).ok()?;
    let address = socket.local_addr().ok()?.ip();
    let far = !address.is_loopback() && !address.is_unspecified();
    far.then(|| address.to_string())
}
