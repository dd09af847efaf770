//! The one table of addresses: method, path, who may call it, what it shows.

use super::state::Web;
use super::{
    again, aide, approve, assets, bench, claim, claims, devices, enter, events, every_bag,
    guard, headers, host, join, kept, marks, network, page, pilot, plan, plan_together,
    prepare, print, rehearse, results, roster, round, run, sign_in, standards, start, take,
    talk, time, trouble, wall, years,
};
use crate::desk::doors::Part;
use axum::Router;
use axum::handler::Handler;
use axum::http::Method;
use axum::middleware::from_fn_with_state;
use axum::routing::{MethodFilter, MethodRouter, on};
use tower_http::compression::CompressionLayer;

/// A part that a caller can have.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub(super) enum Role {
    /// Everybody, joined or not.
    Anyone,
    /// The teacher.
    Teacher,
    /// A group.
    Group,
    /// The wall page.
    Wall,
    /// The teacher's walk-round tablet.
    Round,
    /// An aide.
    Aide,
}

impl Role {
    /// The part whose session proves the role.
    pub(super) const fn part(self) -> Option<Part> {
        match self {
            Self::Anyone => None,
            Self::Teacher => Some(Part::Teacher),
            Self::Group => Some(Part::Group),
            Self::Wall => Some(Part::Wall),
            Self::Round => Some(Part::Round),
            Self::Aide => Some(Part::Aide),
        }
    }
}

/// What holds for an address.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rules {
    /// Its path, as the router writes it.
    pub(super) path: &'static str,
    /// Who may call it.
    pub(super) who: &'static [Role],
    /// Whether it answers only on this computer (or over an encrypted connection).
    pub(super) near: bool,
    /// The most that may be sent to it (bytes).
    pub(super) most: usize,
    /// A file of the program, the same for everybody.
    pub(super) plain_file: bool,
}

/// One address.
pub(super) struct Route {
    /// Method.
    #[cfg_attr(not(test), expect(dead_code, reason = "the proof of roles walks the table"))]
    pub(super) method: Method,
    /// What holds for it.
    pub(super) rules: Rules,
    answer: MethodRouter<Web>,
}

impl Route {
    fn new(
        method: Method,
        path: &'static str,
        who: &'static [Role],
        answer: MethodRouter<Web>,
    ) -> Self {
        // What anyone or the teacher may call is near unless it says otherwise.
        let near = who.iter().all(|role| matches!(role, Role::Anyone | Role::Teacher));
        let rules = Rules { path, who, near, most: SMALL, plain_file: false };
        Self { method, rules, answer }
    }

    /// Answers from the network too.
    fn far(mut self) -> Self {
        self.rules.near = false;
        self
    }

    /// Takes a whole plan.
    #[must_use]
    pub(super) fn takes_a_plan(mut self) -> Self {
        self.rules.most = PLAN;
        self
    }

    /// Takes a zip: a school's roster or a colleague's data package.
    #[must_use]
    fn takes_a_zip(mut self) -> Self {
        self.rules.most = ZIP;
        self
    }

    fn plain_file(mut self) -> Self {
        self.rules.plain_file = true;
        self
    }
}

/// Most that may be sent (bytes).
const SMALL: usize = 64 * 1024;
/// Most that may be sent where a plan is taken (bytes).
const PLAN: usize = 1024 * 1024;
/// Most that may be sent where a zip is taken (bytes).
const ZIP: usize = 8 * 1024 * 1024;

/// An address that is read.
pub(super) fn get<H, T>(path: &'static str, who: &'static [Role], handler: H) -> Route
where
    H: Handler<T, Web>,
    T: 'static,
{
    Route::new(Method::GET, path, who, on(MethodFilter::GET, handler))
}

/// An address that changes something.
pub(super) fn post<H, T>(path: &'static str, who: &'static [Role], handler: H) -> Route
where
    H: Handler<T, Web>,
    T: 'static,
{
    Route::new(Method::POST, path, who, on(MethodFilter::POST, handler))
}

const ANYONE: &[Role] = &[Role::Anyone];
const TEACHER: &[Role] = &[Role::Teacher];
const GROUP: &[Role] = &[Role::Group];
const WALL: &[Role] = &[Role::Wall];
const ROUND: &[Role] = &[Role::Round];
const AIDE: &[Role] = &[Role::Aide];

/// Every address of the program.
pub(super) fn table() -> Vec<Route> {
    vec![
        get("/", ANYONE, page::door).far(),
        get("/a/{version}/{name}", ANYONE, assets::asset).far().plain_file(),
        get("/bench-worker.js", ANYONE, assets::worker).far().plain_file(),
        get("/time", ANYONE, time::time).far().plain_file(),
        // Coming in.
        get("/join", ANYONE, join::ask).far(),
        post("/join", ANYONE, join::group).far(),
        post("/join/page", ANYONE, join::page).far(),
        post("/bench/leave", GROUP, join::leave),
        post("/wall/leave", WALL, join::leave),
        post("/round/leave", ROUND, join::leave),
        post("/aide/leave", AIDE, join::leave),
        get("/teacher", ANYONE, sign_in::ask),
        post("/teacher", ANYONE, sign_in::sign_in),
        post("/teacher/first", ANYONE, sign_in::first),
        post("/teacher/leave", TEACHER, sign_in::leave),
        get("/teacher/passphrase", TEACHER, sign_in::out_page),
        post("/teacher/passphrase", TEACHER, sign_in::change),
        get("/shelf", TEACHER, start::shelf),
        // Starting, planning and preparing.
        get("/start", TEACHER, start::lessons),
        get("/start/ready/{name}", TEACHER, start::lesson),
        post("/start/ready/{name}", TEACHER, start::made),
        post("/start/file", TEACHER, start::file).takes_a_plan(),
        post("/start/invented", TEACHER, start::invented),
        post("/start/again", TEACHER, start::again),
        get("/years", TEACHER, years::show),
        get("/package", TEACHER, take::show),
        post("/package/look", TEACHER, take::look).takes_a_zip(),
        post("/package/take", TEACHER, take::keep).takes_a_zip(),
        get("/i/{id}/plan", TEACHER, plan::show),
        get("/i/{id}/plan/text", TEACHER, plan::text),
        post("/i/{id}/plan", TEACHER, plan::post).takes_a_plan(),
        post("/i/{id}/plan/back", TEACHER, plan::back).takes_a_plan(),
        post("/i/{id}/plan/forecast", TEACHER, plan::forecast).takes_a_plan(),
        get("/i/{id}/plan.toml", TEACHER, plan::download),
        get("/i/{id}/pilot", TEACHER, pilot::show),
        post("/i/{id}/pilot", TEACHER, pilot::post),
        get("/i/{id}/pilot.pdf", TEACHER, pilot::paper),
        get("/i/{id}/pilot.csv", TEACHER, pilot::blank),
        get("/i/{id}/prepare", TEACHER, prepare::show),
        get("/i/{id}/prep.pdf", TEACHER, prepare::prep_pdf),
        get("/i/{id}/forecast.pdf", TEACHER, prepare::forecast_pdf),
        get("/i/{id}/print", TEACHER, print::show),
        get("/i/{id}/print/{file}", TEACHER, print::file),
        get("/i/{id}/rehearse", TEACHER, rehearse::show),
        post("/i/{id}/rehearse", TEACHER, rehearse::set_up),
        post("/i/{id}/rehearse/stop", TEACHER, rehearse::stop),
        get("/i/{id}/rehearse/state", TEACHER, rehearse::so_far),
        get("/i/{id}/results", TEACHER, results::show),
        get("/i/{id}/results.pdf", TEACHER, results::report),
        get("/i/{id}/bags", TEACHER, every_bag::show),
        get("/i/{id}/bags.svg", TEACHER, every_bag::picture),
        get("/i/{id}/curves.csv", TEACHER, every_bag::table),
        get("/i/{id}/data.zip", TEACHER, results::package),
        get("/i/{id}/data.csv", TEACHER, results::table),
        // What groups claim.
        get("/claim", GROUP, claim::show),
        get("/claim/home", GROUP, claim::home),
        post("/claim", GROUP, claim::post),
        post("/claim/read", GROUP, claim::read),
        get("/i/{id}/claims", TEACHER, claims::show),
        post("/i/{id}/claims", TEACHER, claims::act),
        // Another round.
        get("/i/{id}/again", TEACHER, again::show),
        post("/i/{id}/again", TEACHER, again::act),
        // What a class talks about.
        get("/i/{id}/talk", TEACHER, talk::first),
        get("/i/{id}/talk/{period}", TEACHER, talk::show),
        post("/i/{id}/talk/{period}", TEACHER, talk::act),
        // Marks.
        get("/i/{id}/marks", TEACHER, marks::list),
        post("/i/{id}/marks", TEACHER, marks::hand_out),
        get("/i/{id}/marks/rubric", TEACHER, marks::rubric),
        post("/i/{id}/marks/rubric", TEACHER, marks::save_rubric),
        get("/i/{id}/marks/{period}/{group}", TEACHER, marks::one),
        post("/i/{id}/marks/{period}/{group}", TEACHER, marks::mark),
        // Standards.
        get("/i/{id}/standards", TEACHER, standards::show),
        post("/i/{id}/standards", TEACHER, standards::save),
        // Students and groups, and grades as files.
        get("/i/{id}/roster", TEACHER, roster::show),
        post("/i/{id}/roster", TEACHER, roster::save),
        post("/i/{id}/roster/look", TEACHER, roster::look).takes_a_zip(),
        post("/i/{id}/roster/take", TEACHER, roster::take).takes_a_zip(),
        get("/i/{id}/grades/{period}/{file}", TEACHER, roster::grades),
        // What is kept, for how long, and copies of it.
        get("/i/{id}/names", TEACHER, kept::words),
        post("/i/{id}/names/delete", TEACHER, kept::delete),
        post("/i/{id}/names/day", TEACHER, kept::day),
        get("/kept", TEACHER, kept::people),
        post("/kept", TEACHER, kept::delete_all),
        get("/backups", TEACHER, kept::backups),
        post("/backups", TEACHER, kept::backup),
        // Data sheets on paper.
        get("/i/{id}/enter", TEACHER, enter::first),
        get("/i/{id}/enter/{period}/{group}", TEACHER, enter::show),
        post("/i/{id}/enter/{period}/{group}", TEACHER, enter::save),
        post("/i/{id}/enter/{period}/{group}/look", TEACHER, enter::look),
        post("/i/{id}/enter/file/look", TEACHER, enter::look_file).takes_a_plan(),
        post("/i/{id}/enter/file/add", TEACHER, enter::add_file).takes_a_plan(),
        // What groups propose.
        get("/plan-together", GROUP, plan_together::show),
        post("/plan-together", GROUP, plan_together::post),
        get("/i/{id}/approve", TEACHER, approve::show),
        post("/i/{id}/approve", TEACHER, approve::act),
        get("/i/{id}/approve/sheet", TEACHER, plan_together::sheet),
        post("/i/{id}/approve/sheet", TEACHER, plan_together::typed_in),
        get("/i/{id}/proposals.csv", TEACHER, approve::table),
        // Who is in, and the codes.
        post("/i/{id}/devices/out", TEACHER, devices::put_out),
        post("/i/{id}/codes/{period}/open", TEACHER, devices::open_codes),
        post("/i/{id}/codes/{period}/close", TEACHER, devices::close_codes),
        post("/i/{id}/codes/{period}/renew", TEACHER, devices::renew_codes),
        // The class day.
        get("/i/{id}/run", TEACHER, run::any),
        get("/i/{id}/run/{period}", TEACHER, run::run),
        post("/i/{id}/run/{period}", TEACHER, run::act),
        get("/i/{id}/run/{period}/codes", TEACHER, run::codes),
        post("/i/{id}/run/{period}/codes/let-in", TEACHER, network::let_in),
        get("/i/{id}/run/{period}/bag/{code}", TEACHER, run::one_bag),
        post("/i/{id}/run/{period}/bag/{code}", TEACHER, run::act_on_bag),
        get("/bench", GROUP, bench::bench),
        get("/bench/state", GROUP, bench::state),
        post("/bench/entries", GROUP, bench::entries),
        get("/wall", WALL, wall::wall),
        get("/round", ROUND, round::round),
        get("/aide", AIDE, aide::aide),
        // Hearing of changes: as a stream, and by asking.
        get("/i/{id}/events", TEACHER, events::teacher),
        get("/i/{id}/version", TEACHER, events::teacher_version),
        get("/bench/events", GROUP, events::joined),
        get("/bench/version", GROUP, events::version),
        get("/wall/events", WALL, events::joined),
        get("/wall/version", WALL, events::version),
        get("/round/events", ROUND, events::joined),
        get("/round/version", ROUND, events::version),
        get("/aide/events", AIDE, events::joined),
        get("/aide/version", AIDE, events::version),
    ]
}

/// The router, made of the table and of nothing else.
pub(super) fn router(web: &Web) -> Router {
    let mut router = Router::new();
    for route in table() {
        let layer = from_fn_with_state((web.clone(), route.rules), guard::guard);
        router = router.route(route.rules.path, route.answer.layer(layer));
    }
    router
        .fallback(trouble::nowhere)
        .method_not_allowed_fallback(trouble::wrong_method)
        // The last is the outermost. Event streams are never compressed.
        .layer(CompressionLayer::new())
        .layer(from_fn_with_state(web.clone(), host::host))
        .layer(from_fn_with_state(web.clone(), headers::headers))
        .with_state(web.clone())
}
