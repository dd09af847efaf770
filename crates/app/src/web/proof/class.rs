//! A class on a made-up day: a data folder, a record with secrets in it, a router, and a clock
//! that tests set.

use crate::desk::Clock;
use crate::desk::doors::{From, JoinKey, Part, PeriodCodes};
use crate::desk::room::{Kind, Room, Shelf};
use crate::web::cookies;
use crate::web::log::Log;
use crate::web::network::Network;
use crate::web::rehearse::Practice;
use crate::web::routes::router;
use crate::web::state::{Reach, Running, Web};
use axum::Router;
use axum::body::{Body, to_bytes};
use axum::extract::ConnectInfo;
use axum::http::{HeaderMap, Method, Request, StatusCode};
use axum::response::Response;
use barm_domain::record::{Entry, Key, Subject, What, Who};
use jiff::{SignedDuration, Timestamp};
use std::net::{IpAddr, SocketAddr};
use std::sync::Arc;
use std::sync::atomic::{AtomicI64, AtomicU64, Ordering};
use tokio::sync::watch;
use tower::ServiceExt;

/// The invented plan, with marks in what is the teacher's only.
pub(super) fn plan_text() -> String {
    let text = include_str!("../../demo/plan.toml");
    let text = text.replace("Nurse's list checked for milk", ANSWERED);
    assert!(text.contains(ANSWERED), "the mark stands in the plan");
    text
}

/// What the teacher answered to a caution: it may tell of a child's allergy.
pub(super) const ANSWERED: &str = "MARKANSWERED";
/// Twenty minutes into period 1 of the invented day.
pub(super) const DURING_1: &str = "2027-03-09T15:30:00Z";
/// Ten minutes into period 2.
pub(super) const DURING_2: &str = "2027-03-09T16:10:00Z";
/// A passphrase.
pub(super) const PASSPHRASE: &str = "four words of mine";
/// A computer of the school.
pub(super) const NETWORK: &str = "10.20.30.40";
/// This computer.
pub(super) const HERE: &str = "127.0.0.1";

/// A class on a made-up day.
pub(super) struct Class {
    pub(super) web: Web,
    pub(super) room: Arc<Room>,
    pub(super) stop: watch::Sender<bool>,
    router: Router,
    clock: Arc<AtomicI64>,
    keys: AtomicU64,
    pub(super) folder: tempfile::TempDir,
}

/// An answer, read to its end.
#[derive(Debug)]
pub(super) struct Answer {
    pub(super) status: StatusCode,
    pub(super) headers: HeaderMap,
    pub(super) body: String,
    pub(super) bytes: Vec<u8>,
}

/// A request that is being put together.
pub(super) struct Call {
    pub(super) method: Method,
    pub(super) path: String,
    pub(super) from: Option<&'static str>,
    pub(super) cookies: Vec<(String, String)>,
    pub(super) headers: Vec<(String, String)>,
    pub(super) body: String,
    /// What is sent in place of the body, if it is no text.
    pub(super) bytes: Vec<u8>,
}

impl Call {
    pub(super) fn get(path: &str) -> Self {
        Self {
            method: Method::GET,
            path: path.to_owned(),
            from: Some(HERE),
            cookies: Vec::new(),
            headers: vec![("host".into(), "localhost".into())],
            body: String::new(),
            bytes: Vec::new(),
        }
    }

    /// A form from a page of ours, as a browser sends it.
    pub(super) fn form(class: &Class, path: &str, body: &str) -> Self {
        let device = device();
        let token = class.web.shelf.doors.form_token(&device);
        let mut call = Self::get(path);
        call.method = Method::POST;
        call.body = format!("form={token}&{body}");
        let kind = "application/x-www-form-urlencoded";
        call.cookie(cookies::DEVICE, &device)
            .header("content-type", kind)
            .header("origin", "http://localhost")
    }

    /// What a script of ours sends.
    pub(super) fn script(path: &str, body: &str) -> Self {
        let mut call = Self::get(path);
        call.method = Method::POST;
        call.body = body.to_owned();
        call.header("content-type", "application/json")
            .header("origin", "http://localhost")
            .header("x-barm", "1")
    }

    pub(super) fn from(mut self, address: &'static str) -> Self {
        self.from = Some(address);
        self
    }

    pub(super) fn cookie(mut self, name: &str, value: &str) -> Self {
        self.cookies.push((name.to_owned(), value.to_owned()));
        self
    }

    pub(super) fn header(mut self, name: &str, value: &str) -> Self {
        self.headers.retain(|(known, _)| known != name);
        self.headers.push((name.to_owned(), value.to_owned()));
        self
    }

    pub(super) fn without(mut self, name: &str) -> Self {
        self.headers.retain(|(known, _)| known != name);
        self
    }
}

/// The cookie of a device that has one.
pub(super) fn device() -> String {
    "d".repeat(64)
}

impl Class {
    /// A class of this kind of investigation at this moment.
    pub(super) fn at(now: &str, kind: Kind) -> Self {
        Self::of(&plan_text(), now, kind)
    }

    /// A class of this plan.
    pub(super) fn of(plan: &str, now: &str, kind: Kind) -> Self {
        Self::with(plan, now, kind, Reach { lan: true, ..Reach::default() })
    }

    pub(super) fn reached(now: &str, kind: Kind, reach: Reach) -> Self {
        Self::with(&plan_text(), now, kind, reach)
    }

    fn with(plan: &str, now: &str, kind: Kind, reach: Reach) -> Self {
        let folder = tempfile::tempdir().expect("a folder");
        let now: Timestamp = now.parse().expect("a moment");
        let shelf = Arc::new(Shelf::open(folder.path(), now).expect("a shelf"));
        let key = Key::new(1, 1);
        let room = shelf.begin(plan, kind, key, now).expect("a sound plan");
        Self::served(folder, shelf, room, reach, now)
    }

    /// The class of a folder that another program left.
    pub(super) fn again(folder: tempfile::TempDir, now: &str) -> Self {
        let now: Timestamp = now.parse().expect("a moment");
        let shelf = Arc::new(Shelf::open(folder.path(), now).expect("a shelf"));
        let room = shelf.room(1, now).expect("the first investigation");
        Self::served(folder, shelf, room, Reach { lan: true, ..Reach::default() }, now)
    }

    fn served(
        folder: tempfile::TempDir,
        shelf: Arc<Shelf>,
        room: Arc<Room>,
        reach: Reach,
        now: Timestamp,
    ) -> Self {
        let (stop, stopping) = watch::channel(false);
        let clock = Arc::new(AtomicI64::new(now.as_millisecond()));
        let hands = Arc::clone(&clock);
        let web = Web::new(Running {
            shelf,
            reach,
            log: Log::in_folder(folder.path()),
            clock: Arc::new(Clock::Hands(Box::new(move || {
                let ms = hands.load(Ordering::Relaxed);
                Timestamp::from_millisecond(ms).expect("a moment")
            }))),
            network: Network::default(),
            port: 0,
            practice: Practice::default(),
            stopping,
        });
        let router = router(&web);
        Self { web, room, stop, router, clock, keys: AtomicU64::new(2), folder }
    }

    /// Ends the server and gives its folder.
    pub(super) fn close(self) -> tempfile::TempDir {
        let Self { web, room, router, folder, .. } = self;
        drop((router, room, web));
        folder
    }

    /// Sets the clock.
    pub(super) fn later(&self, by: SignedDuration) {
        let by = i64::try_from(by.as_millis()).expect("a short while");
        self.clock.fetch_add(by, Ordering::Relaxed);
    }

    /// The codes of a period.
    pub(super) fn codes(&self, period: &str) -> PeriodCodes {
        self.web.shelf.doors.codes(&self.room, period, self.web.now()).expect("codes")
    }

    /// The token of somebody who came in properly.
    pub(super) fn joined(&self, key: JoinKey<'_>) -> String {
        let from = From { device: &device() };
        let joined = self.web.shelf.join(&from, key, self.web.now());
        joined.expect("the codes work").0.as_str().to_owned()
    }

    /// The token of a group that joined.
    pub(super) fn group(&self, period: &str, group: usize) -> String {
        let codes = self.codes(period);
        let group = &codes.groups[group - 1].1;
        self.joined(JoinKey::Group { period: &codes.period, group })
    }

    /// The teacher's token.
    pub(super) fn teacher(&self) -> String {
        let doors = &self.web.shelf.doors;
        let _ = doors.first_passphrase(PASSPHRASE).expect("a good one");
        let (token, _) = doors.sign_in(PASSPHRASE, HERE, self.web.now()).expect("it fits");
        token.as_str().to_owned()
    }

    /// Puts something on record.
    pub(super) fn note(&self, subject: Subject, who: Who, what: What) -> Key {
        let key = Key::new(2, u128::from(self.keys.fetch_add(1, Ordering::Relaxed)));
        let now = self.web.now();
        let entry = Entry { key, subject, what, measured: now, arrived: now, who };
        self.room.enter_and_wait(&[entry]).expect("on disk");
        key
    }

    /// Calls the router and does not read the body.
    pub(super) async fn open(&self, call: Call) -> Response {
        let mut request = Request::builder().method(call.method).uri(&call.path);
        for (name, value) in &call.headers {
            request = request.header(name, value);
        }
        for (name, value) in &call.cookies {
            request = request.header("cookie", format!("{name}={value}"));
        }
        let body = if call.bytes.is_empty() { call.body.into_bytes() } else { call.bytes };
        let mut request = request.body(Body::from(body)).expect("a request");
        if let Some(from) = call.from {
            let from: IpAddr = from.parse().expect("an address");
            request.extensions_mut().insert(ConnectInfo(SocketAddr::new(from, 50_000)));
        }
        self.router.clone().oneshot(request).await.expect("the router always answers")
    }

    /// Calls the router.
    pub(super) async fn call(&self, call: Call) -> Answer {
        let (parts, body) = self.open(call).await.into_parts();
        let bytes = to_bytes(body, 10_000_000).await.expect("a whole body").to_vec();
        let body = String::from_utf8_lossy(&bytes).into_owned();
        Answer { status: parts.status, headers: parts.headers, body, bytes }
    }
}

impl Answer {
    /// A header; empty if it is not there.
    pub(super) fn header(&self, name: &str) -> &str {
        self.headers.get(name).map_or("", |value| value.to_str().expect("text"))
    }

    /// The cookie of a part that the answer sets, without its attributes.
    pub(super) fn cookie(&self, part: Part) -> Option<String> {
        let start = format!("{}=", cookies::name(part));
        self.headers
            .get_all("set-cookie")
            .iter()
            .filter_map(|line| line.to_str().ok()?.strip_prefix(&start))
            .map(|line| line.split(';').next().unwrap_or_default().to_owned())
            .next()
    }
}
