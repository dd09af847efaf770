// @ts-check
// The plan page follows the keys: what is wrong stands beside its field, and the forecast comes in
// three steps. Each question has a rising number; an answer to an older one is dropped.

const sheet = /** @type {HTMLElement} */ (document.querySelector("[data-plan]"));
const form = /** @type {HTMLFormElement} */ (document.querySelector("form.editform"));
const STEPS = ["line", "band", "all"];

let number = 0;
/** @type {AbortController | null} */
let asking = null;
let focus = "";
let dirty = false;

/** @param {string} id @param {string} markup */
function put(id, markup) {
  const place = document.getElementById(id);
  if (place && place.innerHTML !== markup) place.innerHTML = markup;
}

function fields() {
  /** @type {[string, string][]} */
  const all = [];
  for (const [name, value] of new FormData(form)) {
    if (name.startsWith("f:") && typeof value === "string") all.push([name.slice(2), value]);
  }
  return all;
}

/** @param {Record<string, string>} said */
function beside(said) {
  for (const place of document.querySelectorAll("[data-said]")) {
    const markup = said[place.getAttribute("data-said") ?? ""] ?? "";
    if (place.innerHTML !== markup) place.innerHTML = markup;
    const bad = place.querySelector(".fault") !== null;
    const input = document.getElementById(place.getAttribute("data-for") ?? "");
    input?.closest(".fld")?.classList.toggle("bad", bad);
    if (bad) input?.setAttribute("aria-invalid", "true");
    else input?.removeAttribute("aria-invalid");
  }
}

/** @param {any} told */
function show(told) {
  if (told.said !== null) beside(told.said);
  for (const part of ["around", "tally", "forecast", "verdicts"]) {
    if (told[part] !== null) put(part, told[part]);
  }
}

async function ask() {
  number += 1;
  const own = number;
  asking?.abort();
  asking = new AbortController();
  const text = /** @type {HTMLTextAreaElement} */ (form.elements.namedItem("text")).value;
  const asked = { number: own, focus, text, fields: fields() };
  for (const step of STEPS) {
    let told;
    try {
      const answer = await fetch(`${sheet.dataset.plan}/forecast`, {
        method: "POST",
        headers: { "content-type": "application/json", "x-barm": sheet.dataset.token ?? "" },
        body: JSON.stringify({ ...asked, step }),
        signal: asking.signal,
      });
      if (!answer.ok) return;
      told = await answer.json();
    } catch {
      return;
    }
    if (told.number !== number) return;
    show(told);
  }
  document.documentElement.dataset.foreseen = String(own);
}

form.addEventListener("input", (event) => {
  const name = /** @type {HTMLInputElement} */ (event.target).name ?? "";
  if (name.startsWith("swap-")) return;
  focus = name.replace(/^f:/, "");
  dirty = true;
  void ask();
});

// Answers to cautions stand beside the form and are sent with it.
for (const answer of document.querySelectorAll("[data-answer]")) {
  answer.addEventListener("input", () => {
    dirty = true;
  });
}

form.addEventListener("focusin", (event) => {
  const name = /** @type {HTMLInputElement} */ (event.target).name ?? "";
  if (name.startsWith("f:")) focus = name.slice(2);
});

form.addEventListener("submit", () => {
  dirty = false;
});

// Leaving with something unsaved asks first, as the browser words it.
addEventListener("beforeunload", (event) => {
  if (dirty) event.preventDefault();
});

for (const time of document.querySelectorAll("time[data-day]")) {
  const at = new Date(time.getAttribute("datetime") ?? "");
  if (!Number.isNaN(at.getTime())) {
    time.textContent = at.toLocaleString(document.documentElement.lang, { dateStyle: "medium", timeStyle: "short" });
  }
}

void ask();
