// @ts-check
// Keeps a live page true: listens for changes, asks for the page again, and puts in the parts that
// changed. It moves nothing under a finger and takes the focus from nobody. Clocks tick here.

const root = /** @type {HTMLElement} */ (document.querySelector("[data-live]"));

/** The program's clock as it was heard, this device's then (ms), and how fast the program's runs. */
let clocks = { now: Number(root.dataset.now), at: Date.now(), speed: 1 };
let best = Infinity;

/** Program time now (ms). */
const now = () => clocks.now + (Date.now() - clocks.at) * clocks.speed;

/** Measures this device's clock against the program's; the quickest answer is the best. */
async function measure() {
  try {
    const before = Date.now();
    const answer = await fetch("/time", { cache: "no-store" });
    const after = Date.now();
    const { now_ms, speed } = await answer.json();
    if (after - before <= best) {
      best = after - before;
      clocks = { now: now_ms, at: (before + after) / 2, speed };
    }
  } catch { /* asked again with the next change */ }
}

/** @param {number} seconds */
function clock(seconds) {
  const whole = Math.max(0, Math.round(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

let asked = 0;

function tick() {
  let passed = false;
  for (const time of document.querySelectorAll("time[data-to], time[data-since]")) {
    const { to, since } = /** @type {HTMLElement} */ (time).dataset;
    const seconds = to ? (Number(to) - now()) / 1000 : Math.floor((now() - Number(since)) / 1000);
    passed ||= Boolean(to) && seconds <= 0 && seconds > -3;
    const says = clock(seconds);
    if (time.textContent !== says) time.textContent = says;
  }
  const back = document.querySelector("[data-until]");
  if (back && back !== document.activeElement) {
    const over = Number(/** @type {HTMLElement} */ (back).dataset.until) < now();
    back.classList.toggle("over", over);
  }
  // What was to come has come: the lists are in another order now.
  if (passed && Date.now() - asked > 1500) refresh();
}

/** Parts by name with what the program sent last, clocks left out. @type {Map<string, string>} */
const sent = new Map();
/** @param {Element} part */
const plain = (part) => part.innerHTML.replace(/(<time[^>]*>)[^<]*/g, "$1").replace(/ class="over"/g, "");
for (const part of document.querySelectorAll("[data-part]")) {
  sent.set(/** @type {HTMLElement} */ (part).dataset.part ?? "", plain(part));
}

let pressed = false;
/** Until then (ms of this device's clock) the answer to what was done last stays to be read. */
let answeredUntil = 0;
/** Parts that changed while they were held. @type {Map<string, Element>} */
const waiting = new Map();

/** @param {Element} part */
function held(part) {
  const focus = document.activeElement;
  // A heading is where one looks from: what stands under it may change, and it keeps the focus.
  const does = focus instanceof HTMLElement && focus !== document.body && focus.tabIndex >= 0;
  const inside = does && part.contains(focus);
  return inside || (pressed && part.matches(":hover"));
}

/** Changes rows where they stand; new ones come last, and none is taken out yet.
 * @param {Element} part @param {Element} fresh */
function inPlace(part, fresh) {
  const focus = document.activeElement;
  for (const row of fresh.querySelectorAll("[data-row]")) {
    const key = CSS.escape(/** @type {HTMLElement} */ (row).dataset.row ?? "");
    const own = part.querySelector(`[data-row="${key}"]`);
    if (own && !own.contains(focus) && !(pressed && own.matches(":hover"))) {
      own.replaceChildren(...row.cloneNode(true).childNodes);
    }
  }
}

/** @param {Element} part @param {Element} fresh */
function put(part, fresh) {
  const focus = document.activeElement;
  const had = focus instanceof HTMLElement && part.contains(focus) ? focus : null;
  part.replaceChildren(...fresh.cloneNode(true).childNodes);
  // What has the focus keeps it, if it is still there: by its name, and a link by where it leads.
  const leads = had?.getAttribute("href");
  const heir = had?.id ? document.getElementById(had.id)
    : leads ? part.querySelector(`a[href="${CSS.escape(leads)}"]`) : null;
  if (heir instanceof HTMLElement) heir.focus({ preventScroll: true });
}

/** @param {Document} page @param {boolean} now_all */
function show(page, now_all) {
  const fresh = page.querySelector("[data-live]");
  if (fresh instanceof HTMLElement && fresh.dataset.stage) {
    root.dataset.stage = fresh.dataset.stage;
    root.toggleAttribute("data-quiet", fresh.hasAttribute("data-quiet"));
  }
  for (const fresh of page.querySelectorAll("[data-part]")) {
    const name = /** @type {HTMLElement} */ (fresh).dataset.part ?? "";
    const part = document.querySelector(`[data-part="${CSS.escape(name)}"]`);
    const says = plain(fresh);
    // The page, asked for again, no longer knows what went wrong a moment ago.
    if (name === "done" && !now_all && Date.now() < answeredUntil) continue;
    if (!part || (sent.get(name) === says && !(now_all && waiting.has(name)))) continue;
    sent.set(name, says);
    if (!now_all && held(part)) {
      if (part.hasAttribute("data-rows")) inPlace(part, fresh);
      waiting.set(name, fresh);
      continue;
    }
    waiting.delete(name);
    const lost = part.contains(document.activeElement) ? document.activeElement : null;
    put(part, fresh);
    if (now_all && lost && document.activeElement === document.body) {
      // What was pressed is gone: its list, or what comes next.
      const heir = part.querySelector("[tabindex='-1']") ?? document.getElementById("go-on")
        ?? document.getElementById("stop") ?? document.getElementById("w-bag");
      if (heir instanceof HTMLElement) heir.focus({ preventScroll: true });
    }
  }
  for (const [name] of page.querySelectorAll("[data-part]").length ? waiting : []) {
    if (!page.querySelector(`[data-part="${CSS.escape(name)}"]`)) waiting.delete(name);
  }
}

/** Puts in what waited, once nobody holds it. */
function settle() {
  for (const [name, fresh] of waiting) {
    const part = document.querySelector(`[data-part="${CSS.escape(name)}"]`);
    if (!part) waiting.delete(name);
    else if (!held(part)) {
      waiting.delete(name);
      put(part, fresh);
    }
  }
}

addEventListener("pointerdown", () => { pressed = true; });
for (const end of ["pointerup", "pointercancel"]) {
  addEventListener(end, () => { pressed = false; setTimeout(settle, 300); });
}
addEventListener("focusout", () => setTimeout(settle, 50));

const link = document.getElementById("link");
let silent = false;

/** @param {boolean} answered */
function heard(answered) {
  if (silent === !answered) return;
  silent = !answered;
  root.classList.toggle("silent", silent);
  if (link) link.textContent = silent ? link.dataset.silent ?? "" : "";
}

/** The entry made last, so that its way back stays offered. */
let did = "";
let didUntil = 0;

/** The page's own address, without what was only for its first showing. */
function own() {
  const search = new URLSearchParams(location.search);
  search.delete("bag");
  search.delete("did");
  if (did && Date.now() < didUntil) search.set("did", did);
  const asks = search.toString();
  return location.pathname + (asks ? `?${asks}` : "");
}

let refreshing = false;
let again = false;

/** Asks for the page again and puts in what changed. */
async function refresh() {
  if (refreshing) { again = true; return; }
  refreshing = true;
  asked = Date.now();
  const of = did;
  try {
    const answer = await fetch(own(), { cache: "no-store" });
    if (answer.redirected && new URL(answer.url).pathname !== location.pathname) {
      // Put out, or signed out: the page to come in again.
      location.assign(answer.url);
      return;
    }
    // Something was done meanwhile: this answer is older than what stands here.
    if (of !== did) again = true;
    else if (answer.ok) show(new DOMParser().parseFromString(await answer.text(), "text/html"), false);
    heard(answer.ok);
  } catch { heard(false); }
  refreshing = false;
  if (again) { again = false; setTimeout(refresh, 100); }
}

// Hearing: as a stream, and by asking where no stream comes through.
let version = "";
let streams = false;
/** When the stream was heard last (ms); it says at least every 20 s that it is there. */
let heardAt = 0;
if (root.dataset.live) {
  const stream = new EventSource(root.dataset.live);
  const alive = () => { streams = true; heardAt = performance.now(); };
  const told = () => { alive(); refresh(); };
  stream.addEventListener("alive", alive);
  stream.addEventListener("changed", told);
  stream.addEventListener("message", told);
  stream.addEventListener("error", () => { streams = false; });
}
async function ask() {
  if (streams && performance.now() - heardAt < 50000 || !root.dataset.version) return;
  try {
    const answer = await fetch(root.dataset.version, { cache: "no-store" });
    const says = await answer.text();
    heard(answer.ok);
    if (says !== version) { version = says; refresh(); }
  } catch { heard(false); }
}
setInterval(ask, 3000);
// The ruler's pointer moves by itself.
setInterval(refresh, 20000);
setInterval(tick, 250);
setInterval(measure, 120000);
measure();
tick();

/** A key of 128 bits that sorts by time (RFC 9562, version 7). */
function key() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  let time = Math.round(now());
  for (let at = 5; at >= 0; at--) { bytes[at] = time % 256; time = Math.floor(time / 256); }
  bytes[6] = (bytes[6] & 0x0f) | 0x70;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}

// Forms that change something are sent without leaving the page. The key is made here, once for
// what was typed: a second sending after a lost answer counts as the first.
/** @type {WeakMap<HTMLFormElement, [string, string]>} */
const keys = new WeakMap();
addEventListener("submit", async (event) => {
  const form = event.target;
  if (!(form instanceof HTMLFormElement) || !form.hasAttribute("data-act")) return;
  event.preventDefault();
  const fields = new FormData(form);
  const by = event.submitter;
  if (by instanceof HTMLButtonElement && by.name) fields.set(by.name, by.value);
  const body = new URLSearchParams();
  for (const [name, value] of fields) if (name !== "key") body.append(name, String(value));
  const what = body.toString();
  const old = keys.get(form);
  const own = old && old[0] === what ? old[1] : key();
  keys.set(form, [what, own]);
  body.set("key", own);
  try {
    // Who leaves the page at once has sent it all the same.
    const answer = await fetch(form.action, {
      method: "POST", body, headers: { "x-barm": "1" }, keepalive: true,
    });
    keys.delete(form);
    did = new URL(answer.url).searchParams.get("did") ?? "";
    didUntil = Date.now() + 10000;
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (answer.ok || page.querySelector("[data-part]")) {
      show(page, true);
      answeredUntil = Date.now() + (page.querySelector('[data-part="done"] .fault') ? 20000 : 10000);
      if (answer.ok && form.hasAttribute("data-clear")) {
        for (const input of form.querySelectorAll("input:not([type=hidden])")) {
          if (input instanceof HTMLInputElement && input.id !== "jug-no") input.value = "";
        }
        const first = form.querySelector("input:not([type=hidden])");
        if (first instanceof HTMLInputElement && form.contains(document.activeElement)) first.focus();
      }
    } else {
      location.assign(location.pathname);
    }
    heard(true);
  } catch { heard(false); }
});
