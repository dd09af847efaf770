// @ts-check
// The bench page of a group. It draws everything itself from what the server said last and from
// what was typed here, so that a whole period goes on with the server away.
import { addressOf, brought, linkTo } from "./bench-carry.js";
import { Skew, stateOf } from "./bench-clock.js";
import { draw, tick } from "./bench-page.js";
import { folded } from "./bench-fold.js";
import { newKey, newWordsKey } from "./bench-key.js";
import { Line } from "./bench-send.js";
import { hardToBelieve } from "./bench-slip.js";
import { drop, everything, forget, forgetGroup, keep, note, noted } from "./bench-store.js";
import { bring, learnWords, speak } from "./bench-words.js";
/** @typedef {import("./bench-kinds.js").Entry} Entry */
/** @typedef {import("./bench-kinds.js").Kept} Kept */
/** @typedef {import("./bench-kinds.js").Scene} Scene */
/** @typedef {import("./bench-kinds.js").Bag} Bag */

/**
 * What is being written: for which bag, and in place of what.
 * @typedef {{code: string, what: "zero" | "reading" | "correction", planned: number | null,
 *   of?: string, says?: number, zero?: boolean}} Target
 */

/** What the page is at, beside what stands on record. */
export const page = {
  /** @type {Scene} */
  scene: /** @type {any} */ (null),
  /** @type {Scene} what the server said with what it does not know yet */
  whole: /** @type {any} */ (null),
  /** @type {Kept[]} */
  kept: [],
  skew: new Skew(),
  /** @type {Line} */
  line: /** @type {any} */ (null),
  canKeep: true,
  /** @type {string | null} code of the bag that was tapped */
  chosen: null,
  /** @type {Target | null} what the page asks for; it stays until it is answered or another is tapped */
  asked: null,
  between: false,
  zeroOpen: false,
  /** @type {number | null} */
  tens: null,
  typing: false,
  /** A height is on its way to the disk; a second tap is not a second height. */
  writing: false,
  typeFault: false,
  /** @type {Target | null} */
  change: null,
  /** @type {{target: Target, mm: number, at: number, slip: import("./bench-slip.js").Slip,
   *   earlier: boolean} | null} */
  guard: null,
  /** @type {{code: string, mm: number, target: Target, key: string} | null} */
  last: null,
  list: false,
  moving: false,
  moveFault: false,
  clearAsked: false,
  passFault: false,
  /** The words of a language that was asked for could not be fetched. */
  noWords: false,
  /** @type {string[]} codes of bags whose guess is no number */
  guessFault: [],
  /** Somebody was told that there is no guess yet. */
  guessAsked: false,
  /** What is wrong with the warmth that was typed: its field, and the words. @type {[number, string] | null} */
  pourFault: null,
  /** @type {Kept[]} what a link from an old address brings */
  come: [],
};

/** The program's time now (ms). */
export function now() {
  return Date.now() + (page.skew.offset ?? 0);
}

let latest = 0;
/** The device's time, never twice the same, so that keys sort as they were made. */
function stamp() {
  latest = Math.max(Date.now(), latest + 1);
  return latest;
}

/** @param {string | null} code */
export function bagOf(code) {
  return page.whole.bags.find((bag) => bag.code === code) ?? null;
}

/**
 * What is to be written now, if anything is.
 * @returns {Target | null}
 */
export function target() {
  if (page.change) return page.change;
  if (page.whole.stand_in) return null;
  const clock = page.whole.clock;
  const at = now();
  const states = page.whole.bags.map((bag) => ({ bag, state: stateOf(clock, bag, at) }));
  const open = states.filter(({ state }) =>
    state.is === "due" || state.is === "late" || (state.is === "zero" && page.zeroOpen),
  );
  open.sort((a, b) => rank(a.state) - rank(b.state));
  const asked = page.asked;
  const writes = page.typing || page.tens !== null;
  // A question never changes under a hand that writes, nor while it waits for its answer.
  const stands = asked && open.find(({ bag, state }) => bag.code === asked.code && planned(state) === asked.planned);
  if (asked && bagOf(asked.code) && (stands || writes)) return asked;
  const tapped = states.find(({ bag }) => bag.code === page.chosen);
  const next = open.find(({ bag }) => bag.code === page.chosen) ?? (tapped && page.between ? tapped : open[0]);
  page.asked = next ? { code: next.bag.code, what: next.state.is === "zero" ? "zero" : "reading", planned: planned(next.state) } : null;
  return page.asked;
}

/** The minute that is to be read. @param {import("./bench-clock.js").State} state */
function planned(state) {
  return state.is === "due" || state.is === "late" ? state.planned : null;
}

/** @param {import("./bench-clock.js").State} state */
function rank(state) {
  return state.is === "zero" ? 0 : state.inS;
}

/** Works out what stands, and draws it. */
export function show() {
  page.whole = folded(page.scene, page.kept, page.skew.offset ?? 0);
  draw();
}

/**
 * Keeps entries on this device, then says so, then sends them.
 * @param {Omit<Entry, "key" | "at" | "offset">[]} made
 * @param {number} [at] when it was read, on the device's clock
 */
async function enter(made, at) {
  const seat = page.scene.seat;
  const all = made.map((one) => {
    const time = stamp();
    const entry = { ...one, key: newKey(time), at: at ?? time, offset: page.skew.offset };
    return /** @type {Kept} */ ({ key: entry.key, entry, seat, state: "kept" });
  });
  try {
    await keep(all);
    page.canKeep = true;
  } catch {
    // Sent all the same, as long as the page is open; and the page says that it is not kept.
    page.canKeep = false;
  }
  page.kept.push(...all);
  show();
  page.line.soon();
  return all;
}

/** What a height is judged by: with it, and without. */
function judged(/** @type {Target} */ to, /** @type {number} */ mm, /** @type {number} */ at) {
  const bag = /** @type {Bag} */ (bagOf(to.code));
  const time = at + (page.skew.offset ?? 0);
  const tried = { key: "tried", at_ms: time, mm, confirmed: false, rival: false };
  let zero = bag.zero;
  let readings = bag.readings;
  if (to.what === "zero") zero = /** @type {any} */ (tried);
  if (to.what === "reading") readings = /** @type {any} */ ([...readings, tried]);
  if (to.what === "correction") {
    const swap = (/** @type {any} */ one) => (one && one.key === to.of ? { ...one, mm, confirmed: false } : one);
    zero = swap(zero);
    readings = readings.map(swap);
  }
  const before = hardToBelieve(bag.zero, bag.readings, bag.odd, bag.full_mm);
  const after = hardToBelieve(zero, readings, bag.odd, bag.full_mm);
  const own = to.what === "correction" ? to.of : "tried";
  const fresh = after.find((slip) => slip.reading === own);
  if (fresh) return { slip: fresh, earlier: false };
  // The new height may make the zero reading doubtful.
  const old = after.find((slip) => slip.reading === zero?.key && !before.some((one) => one.reading === slip.reading));
  return old ? { slip: old, earlier: true } : null;
}

/** @param {number} mm */
export async function write(mm) {
  if (page.writing) return;
  page.writing = true;
  const onKey = document.activeElement?.classList.contains("key") ?? false;
  try {
    await judgeAndPut(mm);
  } finally {
    page.writing = false;
    show();
  }
  // The next height begins at the first key.
  const first = document.querySelector('[data-k="tens-0"]');
  if (onKey && first instanceof HTMLElement) first.focus({ preventScroll: true });
}

/** @param {number} mm */
async function judgeAndPut(mm) {
  const to = target();
  if (!to || !bagOf(to.code)) return;
  const at = Date.now();
  const odd = judged(to, mm, at);
  page.tens = null;
  page.typing = false;
  if (odd && !odd.earlier) {
    page.guard = { target: to, mm, at, ...odd };
    show();
    document.getElementById("guard")?.focus();
    return;
  }
  await put(to, mm, at, false);
  if (odd) {
    const bag = /** @type {Bag} */ (bagOf(to.code));
    if (!bag.zero) return;
    const zero = { code: to.code, what: /** @type {"correction"} */ ("correction"), planned: null, of: bag.zero.key, zero: true };
    page.guard = { target: zero, mm: bag.zero.mm, at: Date.now(), ...odd };
    show();
    document.getElementById("guard")?.focus();
  }
}

/**
 * Writes a height down; `sure` says that somebody has looked at it again.
 * @param {Target} to
 * @param {number} mm
 * @param {number} at
 * @param {boolean} sure
 */
async function put(to, mm, at, sure) {
  const bag = /** @type {Bag} */ (bagOf(to.code));
  const common = { bag: to.code, mm };
  if (to.what === "zero" && !bag.sealed) {
    await enter([{ bag: to.code, what: "sealed", plan: page.scene.plan }], at - 1);
  }
  page.guard = null;
  page.change = null;
  page.between = false;
  page.chosen = null;
  page.asked = null;
  if (to.what === "correction") {
    await enter([{ ...common, what: "correction", of: to.of }]);
    page.last = { code: to.code, mm, target: to, key: /** @type {string} */ (to.of) };
  } else {
    const planned = to.what === "reading" ? { planned: to.planned } : {};
    const [made] = await enter([{ ...common, what: to.what, ...planned }], at);
    if (sure) await enter([{ ...common, what: "correction", of: made.key }]);
    page.last = { code: to.code, mm, target: to, key: made.key };
  }
  show();
}

/**
 * What was chosen where a height looked odd.
 * @param {"again" | "keep" | "write" | "leak"} choice
 * @param {number} [mm]
 */
export async function settle(choice, mm) {
  const guard = page.guard;
  if (!guard || page.writing) return;
  page.writing = true;
  try {
    await answer(guard, choice, mm);
  } finally {
    page.writing = false;
    show();
  }
}

/**
 * @param {NonNullable<typeof page.guard>} guard
 * @param {"again" | "keep" | "write" | "leak"} choice
 * @param {number} [mm]
 */
async function answer(guard, choice, mm) {
  if (choice === "again") {
    page.guard = null;
    show();
  } else if (choice === "write" && mm !== undefined) {
    await put(guard.target, mm, guard.at, false);
  } else if (choice === "leak") {
    await enter([{ bag: guard.target.code, what: "odd", odd: "leak" }]);
    await put(guard.target, guard.mm, guard.at, false);
  } else {
    // Corrected to itself: somebody has looked at it again, and nobody asks any more.
    await put(guard.target, guard.mm, guard.at, true);
  }
}

export async function tapOdd(/** @type {string} */ code, /** @type {string} */ word) {
  await enter([{ bag: code, what: "odd", odd: word }]);
}

export async function oddBack(/** @type {string} */ code, /** @type {string} */ key) {
  await enter([{ bag: code, what: "odd-back", of: key }]);
}

/** How warm the water of these bags was at pouring. @param {Bag[]} bags @param {number} celsius */
export async function poured(bags, celsius) {
  await enter(bags.map((bag) => ({ bag: bag.code, what: "made", celsius })));
}

export async function vent(/** @type {string} */ code) {
  await enter([{ bag: code, what: "vented" }]);
}

/**
 * @param {[string, number][]} expects
 * @param {string} because
 */
export async function guess(expects, because) {
  const why = because.trim() === "" ? {} : { because: because.trim().slice(0, 500), words: newWordsKey() };
  await enter([{ bag: null, what: "guess", expects, ...why }]);
}

/** @param {string} written */
export function move(written) {
  const origin = addressOf(written);
  page.moveFault = origin === null;
  if (origin === null) return show();
  page.moving = true;
  location.assign(linkTo(origin, page.kept.filter((one) => one.state === "kept")));
}

export async function takeCome() {
  const codes = new Set(page.scene.bags.map((bag) => bag.code));
  const ours = page.come.map((one) =>
    one.entry.bag === null || codes.has(one.entry.bag) ? { ...one, seat: page.scene.seat } : one,
  );
  await keep(ours);
  const known = new Set(page.kept.map((one) => one.key));
  page.kept.push(...ours.filter((one) => !known.has(one.key)));
  leaveCome();
  page.line.soon();
}

export function leaveCome() {
  page.come = [];
  history.replaceState(null, "", location.pathname);
  show();
}

/** Forgets everything here and leaves the group. */
export async function clear() {
  // Whoever cannot leave would still be in; and nothing unsent is thrown away at one tap.
  const left = await leave();
  if (!left && !page.clearAsked) {
    page.clearAsked = true;
    return show();
  }
  page.moving = true;
  page.line.end();
  await forget();
  sessionStorage.removeItem("class-code");
  page.kept = [];
  location.replace("/join");
}

/** Leaves so that the next group can join here; what is not sent stays for the group it is of. */
export async function passOn() {
  page.passFault = !(await leave());
  if (page.passFault) return show();
  page.moving = true;
  await forgetGroup(page.kept.filter((one) => one.state === "saved").map((one) => one.key));
  location.replace("/join");
}

/** Ends the session; says whether the program has heard it. Otherwise it ends by itself. */
async function leave() {
  await forgetPage().catch(() => {});
  try {
    const answer = await fetch("/bench/leave", { method: "POST", headers: { "x-barm": "1" }, redirect: "manual", signal: AbortSignal.timeout(8_000) });
    // Whoever is not in any more has left.
    return answer.type === "opaqueredirect" || [401, 403].includes(answer.status);
  } catch {
    return false;
  }
}

/** @param {string} code */
export async function setLanguage(code) {
  page.noWords = !(await bring(code));
  if (!page.noWords) speak(code);
  show();
  if (!page.noWords) await note("language", code);
}

/** Opened again without the server: what it said last, and how its clock stood then. */
async function recall() {
  try {
    const [scene, contact] = await Promise.all([noted("scene"), noted("contact")]);
    if (scene?.seat === page.scene.seat) page.scene = scene;
    if (contact) page.skew.recall(contact);
  } catch {
    // The page that was kept says enough to go on with.
  }
}

/** Lets the page be opened again without the server, where connections are encrypted. */
function stay() {
  if (location.protocol !== "https:" || !("serviceWorker" in navigator)) return;
  navigator.serviceWorker.register("/bench-worker.js", { scope: "/bench" }).catch(() => {
    // Then it is as without encryption: the page must stay open.
  });
}

/** Nothing of the group is left to be opened again. */
async function forgetPage() {
  if (!("caches" in globalThis)) return;
  const names = await caches.keys();
  await Promise.all(names.map(async (name) => (await caches.open(name)).delete("/bench")));
}

/** Speaks the language that was chosen here before, as soon as its words are there. */
async function remember() {
  const chosen = await noted("language");
  if (typeof chosen !== "string" || chosen === document.documentElement.lang) return;
  bring(chosen).then((here) => {
    if (!here) return;
    speak(chosen);
    show();
  });
}

async function begin() {
  const island = document.getElementById("given");
  const given = JSON.parse(island?.textContent ?? "{}");
  learnWords(given.words, given.languages);
  page.scene = given.scene;
  // The page itself was a contact, though nobody knows how long it took.
  if (island?.hasAttribute("data-again")) await recall();
  else page.skew.hear(Date.now() - performance.now(), Date.now(), given.scene.now_ms, given.scene.speed);
  speak(document.documentElement.lang);
  page.line = new Line({
    kept: () => page.kept,
    scene: () => page.scene,
    skew: page.skew,
    changed: show,
    heard: (scene) => {
      page.scene = scene;
      const keys = new Set(scene.keys);
      page.kept = page.kept.filter((one) => one.state === "refused" || !keys.has(one.key));
      show();
    },
  });
  // Drawn before the disk has answered, and once more after.
  show();
  try {
    // Whoever chose a language where they joined wants it here too.
    const chosen = new URLSearchParams(location.search).has("lang");
    if (chosen) await note("language", document.documentElement.lang);
    else await remember();
    const known = new Set(page.scene.keys);
    page.kept = await everything();
    const past = page.kept.filter((one) => known.has(one.key) && one.state === "saved");
    await drop(past.map((one) => one.key));
    await note("scene", page.scene);
  } catch {
    page.canKeep = false;
  }
  const here = new Set(page.kept.map((one) => one.key));
  page.come = brought(location.hash).filter((one) => !here.has(one.key));
  addEventListener("beforeunload", (event) => {
    if (page.line.waiting().length > 0 && !page.moving) event.preventDefault();
  });
  addEventListener("resize", show);
  show();
  page.line.start();
  setInterval(tick, 500);
  stay();
}

begin();
