// @ts-check
// The bench page from top to bottom.
import { bagOf, leaveCome, move, now, page, passOn, setLanguage, show, takeCome, target, clear } from "./bench.js";
import { fallsAt, LATE_S, stands, stateOf } from "./bench-clock.js";
import { curve, sentences } from "./bench-curve.js";
import { el, part, sign } from "./bench-draw.js";
import { markIcon } from "./bench-look.js";
import { after, guessing, odd, oddName, pouring, steps, wrote } from "./bench-rest.js";
import { asking } from "./bench-ask.js";
import { clockText, languages, mmText, soft, spoken, t, timeText } from "./bench-words.js";
/** @typedef {import("./bench-kinds.js").Bag} Bag */
/** @typedef {import("./bench-clock.js").State} State */

/** @returns {{bag: Bag, state: State}[]} */
function states() {
  const at = now();
  return page.whole.bags.map((bag) => ({ bag, state: stateOf(page.whole.clock, bag, at) }));
}

/** What changes a drawing, and not every second. */
function moment() {
  return states().map(({ state }) => [state.is, state.planned]);
}

/** Which stretch of the period it is, for the order of the parts. */
function stretch() {
  const all = states();
  if (all.every(({ state }) => state.is === "zero")) return "before";
  const over = all.every(({ state }) => ["done", "vented", "lost"].includes(state.is));
  return over ? "after" : "during";
}

/** Where guess and end stand: first while their time is, last otherwise. */
function arrange() {
  const now_ = stretch();
  if (document.body.dataset.stretch === now_) return;
  document.body.dataset.stretch = now_;
  const [left, right] = document.querySelectorAll(".bcol");
  const [guess, after_, device_] = ["guess", "after", "device"].map((id) => /** @type {HTMLElement} */ (document.getElementById(id)));
  if (now_ === "before") left.prepend(guess);
  else right.insertBefore(guess, device_);
  if (now_ === "after") left.prepend(after_);
  else right.insertBefore(after_, device_);
}

export function draw() {
  const { whole, scene } = page;
  const said = spoken();
  const to = target();
  const base = [said, whole.bags, moment(), whole.stand_in];
  document.title = `${title()} · Barm`;
  arrange();
  // With numbers of others there is nothing to write, and those come first.
  const lent = whole.stand_in;
  const own = (/** @type {() => any[]} */ make) => () => (lent ? [] : make());
  put(lent);
  part("head", [said, title(), counted(), page.come.length], head);
  part("notes", [said, scene.kind, scene.older, scene.inquiry, stretch(), page.line?.up, page.line?.out, page.canKeep, page.come.length, page.noWords, counted()], notes);
  part("clock", [...base, whole.clock, to, page.zeroOpen], own(() => clock(to)));
  part("tabs", [...base, to, page.chosen], own(() => tabs(to)));
  part("ask", [said, to, page.tens, page.typing, page.writing, page.typeFault, page.guard, page.last, page.zeroOpen, page.guessAsked, whole.bags, whole.clock.began_ms, moment(), lent], () => (lent && !to ? [] : asking(to)));
  part("opened", [said, whole.opened?.[said]], opened);
  part("steps", [said, scene.inquiry, scene.bags, stretch(), lent], own(() => steps(stretch())));
  part("pour", [said, whole.bags, page.zeroOpen, page.pourFault, counted(), stretch(), lent], own(() => pouring(stretch())));
  part("odd", [said, to?.code, page.chosen, whole.bags.map((bag) => bag.odd), whole.clock.ended_ms, stretch(), lent], own(() => odd(to, stretch())));
  part("curve", [said, whole.bags, width()], drawCurve);
  part("two", [said, whole.bags], two);
  part("guess", [said, whole.guess, scene.bags.map((bag) => bag.code), stretch(), page.guessFault, lent], own(() => guessing(stretch())));
  part("wrote", [said, whole.bags, whole.clock.minutes, page.kept.map((one) => [one.key, one.state])], wrote);
  part("after", [said, whole.bags.map((bag) => [bag.code, bag.vented, bag.lost]), stretch()], () => after(stretch()));
  document.getElementById("tabs")?.setAttribute("aria-label", t("bench-bags"));
  part("device", [said, page.list, page.list && page.kept, page.moveFault, page.clearAsked, page.passFault, page.kept.length, counted()], device);
  tick();
}

/** What the teacher gave or opened to the group stands first while nothing is written here. */
function put(/** @type {string | null} */ lent) {
  const column = document.querySelectorAll(".bcol")[lent ? 0 : 1];
  const place = /** @type {HTMLElement} */ (document.getElementById("opened"));
  if (place.parentElement !== column) column.prepend(place);
}

/** It is drawn by the program, in every language. */
function opened() {
  const drawn = page.whole.opened?.[spoken()] ?? "";
  const chosen = document.querySelector("#opened input[type=radio]:checked")?.getAttribute("value");
  const made = new DOMParser().parseFromString(drawn, "text/html");
  // What the group looks at stays in sight when numbers change.
  const again = chosen ? made.querySelector(`input[type=radio][value="${CSS.escape(chosen)}"]`) : null;
  if (again instanceof HTMLInputElement) again.checked = true;
  return [...made.body.childNodes];
}

let was = "";
/** Sets the clocks; draws again when somebody's turn has come. */
export function tick() {
  const at = now();
  for (const one of document.querySelectorAll("[data-until]")) {
    const time = clockText((Number(one.getAttribute("data-until")) - at) / 1000);
    const text = one.hasAttribute("data-in") ? t("bench-in", { time }) : time;
    if (one.textContent !== text) one.textContent = text;
  }
  for (const one of document.querySelectorAll("[data-since]")) {
    const late = (at - Number(one.getAttribute("data-since"))) / 1000;
    const text = t("state-late", { time: clockText(Math.floor(late)) });
    if (one.textContent !== text) one.textContent = text;
  }
  const is = JSON.stringify([moment(), stands(page.whole.clock, at)]);
  if (was !== is) {
    was = is;
    draw();
  }
}

function title() {
  const { label, group, period } = page.scene;
  return label ? t("bench-title-named", { label, group, period }) : t("bench-title", { group, period });
}

/** What this device keeps for this group; another group's waits for that group. */
function own() {
  return page.kept.filter((one) => one.seat === page.scene.seat);
}

function unsent() {
  return own().filter((one) => one.state === "kept");
}

function counted() {
  return unsent().length;
}

function head() {
  const count = counted();
  const come = page.come.length;
  const state = come > 0 ? el("span", { class: "st kept" }, sign("kept"), t("bench-come", { count: count + come })) :
    count > 0
      ? el("span", { class: "st kept" }, sign("kept"), t("bench-kept-count", { count }))
      : el("span", { class: "st saved" }, sign("saved"), t("bench-all-saved"));
  const choose = languages().map(([code, name]) =>
    el("button", { class: "tongue", type: "button", lang: code, "data-k": `lang-${code}`, "aria-pressed": String(code === spoken()), click: () => setLanguage(code) }, name),
  );
  return [
    el("h1", {}, title()),
    el("div", { class: "tongues", role: "group", "aria-label": t("language-choose") }, ...choose),
    el("div", { role: "status" }, state),
  ];
}

function notes() {
  const all = [];
  if (page.scene.kind !== "real") all.push(el("p", { class: "made-up" }, t(page.scene.kind === "invented" ? "bench-invented" : "bench-rehearsal")));
  if (stretch() === "after") {
    all.push(el("p", {}, el("a", { class: "btn quiet", href: `/claim?lang=${spoken()}` }, t("bench-claim"))));
  }
  if (stretch() === "before" && ["guided", "open"].includes(page.scene.inquiry)) {
    all.push(el("p", {}, el("a", { class: "btn quiet", href: `/plan-together?lang=${spoken()}` }, t("bench-plan-own"))));
  }
  if (page.scene.older) all.push(el("p", { class: "soft small" }, t("bench-older-plan", { version: page.scene.older })));
  if (page.noWords) all.push(el("p", { class: "away", role: "alert" }, t("bench-no-words")));
  if (!page.canKeep) all.push(el("p", { class: "away" }, t("bench-no-store")));
  if (page.line?.out) {
    all.push(el("p", { class: "away" }, `${t("bench-out")} `, el("a", { href: "/join" }, t("bench-out-go"))));
  } else if (page.line && !page.line.up) {
    all.push(el("p", { class: "away" }, t("bench-no-link"), counted() > 0 ? ` ${t("bench-stay")}` : ""));
  }
  if (page.come.length > 0) {
    all.push(
      el("div", { class: "guard" },
        el("p", {}, el("b", {}, t("bench-carry", { count: page.come.length })), ` ${t("bench-carry-lead")}`),
        el("div", { class: "btns" },
          el("button", { class: "btn", type: "button", click: takeCome }, t("bench-carry-take")),
          el("button", { class: "btn", type: "button", click: leaveCome }, t("bench-carry-leave")))),
    );
  }
  return all;
}

/** @param {import("./bench.js").Target | null} to */
export function readingName(to) {
  if (to?.what === "zero" || to?.zero) return t("bench-reading-zero");
  return to?.planned ? t("bench-reading-of", { minute: to.planned }) : t("bench-reading-between");
}

/** @param {import("./bench.js").Target | null} to */
function clock(to) {
  const { clock: its, bags } = page.whole;
  const at = now();
  if (bags.length === 0) return [el("p", {}, t("bench-no-bags"))];
  if (stands(its, at)) {
    return [el("div", { class: "wait still" }, el("h2", {}, t("bench-stopped")), el("p", { class: "soft" }, t("bench-stopped-lead")))];
  }
  const all = states();
  const bag = to && bagOf(to.code);
  if (to && bag && !page.change && to.what === "reading" && to.planned !== null && bag.zero) {
    const due = fallsAt(its, bag.zero.at_ms, to.planned, at);
    const late = (at - due) / 1000 > LATE_S;
    const label = late
      ? el("span", { class: "st late" }, sign("late"), el("span", { "data-since": due }))
      : el("span", { class: "st due" }, sign("due"), t("state-due"));
    const minute = its.minutes.find((one) => one > /** @type {number} */ (to.planned));
    const next = minute === undefined ? null : fallsAt(its, bag.zero.at_ms, minute, at);
    return [
      el("div", { class: "bigclock" },
        label,
        el("span", { class: "w" }, readingName(to)),
        next !== null && el("span", { class: "nxt" }, `${t("bench-next-in")} `, el("b", { role: "timer", "data-until": next }))),
    ];
  }
  if (stretch() === "before") {
    const begun = its.began_ms !== null;
    return begun ? [] : [el("p", { class: "note lead" }, t("bench-not-begun"))];
  }
  if (its.ended_ms !== null) return [el("p", { class: "lead" }, t("bench-over"))];
  const waiting = all.filter(({ state }) => state.is === "waiting").sort((a, b) => a.state.inS - b.state.inS);
  if (waiting.length === 0) return [];
  const { bag: next, state } = waiting[0];
  const until = fallsAt(its, next.zero?.at_ms ?? 0, state.planned ?? 0, at);
  return [
    el("div", { class: "wait" },
      el("span", {}, t("bench-wait")),
      el("b", { role: "timer", "data-until": until }),
      el("span", { class: "soft" }, `${t("bench-wait-minute", { minute: state.planned ?? 0 })}, ${t("bench-wait-bag", { bag: next.letter })}`)),
  ];
}

/** @param {import("./bench.js").Target | null} to */
function tabs(to) {
  const its = page.whole.clock;
  const at = now();
  return states().map(({ bag, state }) => {
    const on = to ? to.code === bag.code : page.chosen === bag.code;
    const height = bag.readings[bag.readings.length - 1] ?? bag.zero;
    const keptHere = height && page.kept.some((one) => one.state === "kept" && (one.key === height.key || one.entry.of === height.key));
    const mm = height && el("span", { class: "st saved" }, sign(keptHere ? "kept" : "saved"), el("span", { class: "vh" }, t(keptHere ? "state-kept" : "state-saved")), `${mmText(height.mm)} mm`);
    const word = {
      zero: () => t(on ? "bench-now" : "bench-zero-next"),
      due: () => t(on ? "bench-now" : "bench-then"),
      late: () => t(on ? "bench-now" : "bench-then"),
      stopped: () => t("bench-still"),
      done: () => t("bench-done"),
      vented: () => t("bench-opened"),
      lost: () => t("bench-lost"),
      waiting: () => null,
    }[state.is]();
    const second = word ?? el("span", { "data-in": true, "data-until": fallsAt(its, bag.zero?.at_ms ?? 0, state.planned ?? 0, at) });
    return el("button", { type: "button", class: on ? "on" : null, "aria-pressed": String(on), "data-k": `tab-${bag.code}`, click: () => choose(bag.code) },
      el("b", {}, bag.letter),
      el("span", { class: "tr" }, markIcon(bag.look, bag.hollow), " ", soft(bag.treatment[spoken()] ?? bag.treatment.en)),
      el("span", { class: "turnline" }, mm, el("span", { class: "soft" }, second)));
  });
}

/** @param {string} code */
function choose(code) {
  page.chosen = page.chosen === code ? null : code;
  page.asked = null;
  page.typing = false;
  page.between = false;
  page.change = null;
  page.guard = null;
  page.tens = null;
  show();
}

function width() {
  return Math.round((document.getElementById("curve")?.clientWidth ?? 600) / 40);
}

function drawCurve() {
  const { bags, clock: its } = page.whole;
  const room = document.getElementById("curve")?.clientWidth ?? 600;
  if (!bags.some((bag) => bag.zero)) return [];
  return [
    el("h2", {}, t("bench-curve")),
    curve(bags, its.minutes[its.minutes.length - 1] ?? 0, room),
    sentences(bags),
  ];
}

/** Two heights for one reading. */
function two() {
  const who = { device: "who-device", group: "who-group", teacher: "who-teacher", paper: "who-paper" };
  return page.whole.bags.flatMap((bag) => {
    const rivals = [bag.zero, ...bag.other_zeros, ...bag.readings].filter((one) => one !== null && one.rival);
    if (rivals.length < 2) return [];
    const lines = rivals.map((one) => {
      if (!one) return null;
      const zero = one === bag.zero || bag.other_zeros.includes(one);
      const reading = readingName({ code: bag.code, what: zero ? "zero" : "reading", planned: one.planned });
      const time = timeText(one.at_ms - (page.skew.offset ?? 0));
      return el("li", {}, t("bench-two-line", { reading, mm: mmText(one.mm), who: t(who[one.who]), time }));
    });
    return [
      el("div", { class: "guard" },
        el("h2", {}, t("bench-two", { bag: bag.letter })),
        el("ul", { class: "plain" }, ...lines),
        el("p", { class: "soft" }, t("bench-two-lead"))),
    ];
  });
}

function device() {
  const waiting = unsent();
  const refused = own().filter((one) => one.state === "refused").length;
  const others = page.kept.filter((one) => one.state === "kept" && one.seat !== page.scene.seat).length;
  const again = (/** @type {() => void} */ change) => () => {
    change();
    show();
  };
  return [
    el("h2", {}, t("bench-device")),
    refused > 0 && el("p", {}, sign("refused"), ` ${t("bench-refused", { count: refused })}`),
    el("button", { class: "btn quiet", type: "button", "data-k": "list", "aria-expanded": String(page.list), click: again(() => (page.list = !page.list)) }, t(page.list ? "bench-list-hide" : "bench-list-show")),
    page.list && list(),
    others > 0 && el("p", {}, sign("kept"), ` ${t("bench-others", { count: others })}`),
    el("details", { id: "pass" },
      el("summary", { "data-k": "pass" }, t("bench-pass")),
      el("p", {}, t("bench-pass-lead")),
      waiting.length > 0 && el("p", { class: "away" }, t("bench-pass-unsent", { count: waiting.length })),
      page.passFault && el("p", { class: "away", role: "alert" }, t("bench-pass-fault")),
      el("button", { class: "btn", type: "button", "data-k": "pass-sure", click: passOn }, t("bench-pass-sure"))),
    el("details", { id: "move" },
      el("summary", { "data-k": "move" }, t("bench-move")),
      el("form", { submit: (/** @type {Event} */ event) => {
        event.preventDefault();
        move(/** @type {HTMLInputElement} */ (document.getElementById("address")).value);
      } },
        el("p", {}, `${t("bench-move-lead")} ${t("bench-move-keeps")}`),
        el("label", { for: "address" }, t("bench-move-label")),
        el("span", { class: page.moveFault ? "fld wide bad" : "fld wide" }, el("input", { id: "address", inputmode: "url", autocomplete: "off", spellcheck: "false", autocapitalize: "none", "data-k": "address", "aria-invalid": page.moveFault ? "true" : null, "aria-describedby": page.moveFault ? "address-fault" : null })),
        page.moveFault && el("p", { id: "address-fault", role: "alert" }, t("bench-move-fault")),
        el("button", { class: "btn", type: "submit", "data-k": "move-go" }, t("bench-move-go")))),
    el("details", { id: "clear" },
      el("summary", { "data-k": "clear" }, t("bench-clear")),
      el("p", {}, t("bench-clear-lead")),
      waiting.length > 0 && el("p", { class: "away" }, t("bench-clear-unsent", { count: waiting.length })),
      page.clearAsked && el("p", { class: "away", role: "alert" }, t("bench-clear-fault")),
      el("button", { class: "btn", type: "button", "data-k": "clear-sure", click: clear }, t("bench-clear-sure"))),
  ];
}

/** What is not sent, to be copied on paper. */
function list() {
  const rows = unsent().filter(({ entry }) => entry.what !== "sealed");
  if (rows.length === 0) return el("p", {}, t("bench-list-empty"));
  const what = (/** @type {import("./bench-kinds.js").Entry} */ entry) => {
    if (entry.what === "odd") return oddName(entry.odd ?? "");
    if (entry.what === "made") return `${entry.celsius} °C`;
    if (entry.what === "odd-back") return t("bench-odd-back");
    if (entry.what === "vented") return t("bench-opened");
    return entry.what === "correction" ? t("bench-change") : entry.what === "guess" ? t("bench-guess") : "";
  };
  const minute = (/** @type {import("./bench-kinds.js").Entry} */ entry) => (entry.what === "zero" ? "0" : String(entry.planned ?? ""));
  return el("div", { class: "fixw" },
    el("p", {}, t("bench-list-lead")),
    el("table", {},
      el("thead", {}, el("tr", {}, ...["bench-list-bag", "bench-list-minute", "bench-list-mm", "bench-list-time", "bench-list-what"].map((key) => el("th", { scope: "col" }, t(key))))),
      el("tbody", {}, ...rows.map(({ entry }) =>
        el("tr", {},
          el("td", { class: "code" }, entry.bag ?? ""),
          el("td", {}, minute(entry)),
          el("td", {}, entry.mm === undefined ? (entry.expects ?? []).map(([, mm]) => mmText(mm)).join(", ") : mmText(entry.mm)),
          el("td", {}, timeText(entry.at)),
          el("td", {}, what(entry)))))));
}
