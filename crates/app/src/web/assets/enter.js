// @ts-check
// The grid for data sheets: keeps what is typed, asks what it means, saves it.
import { newKey } from "./bench-key.js";
import { choices, differences } from "./enter-again.js";
import { files } from "./enter-file.js";
import { moves } from "./enter-grid.js";
import { keep, kept } from "./enter-store.js";
/** @typedef {import("./enter-store.js").Draft} Draft */

/** @param {string} id */
const element = (id) => /** @type {HTMLElement} */ (document.getElementById(id));
const root = /** @type {HTMLElement} */ (document.querySelector("[data-enter]"));
const home = root.dataset.enter ?? "";
const grid = element("grid");
const status = element("status");
const said = element("said");
const saves = [...grid.querySelectorAll("[data-do]")];
const inputs = /** @type {HTMLInputElement[]} */ ([...grid.querySelectorAll("input[data-bag]")]);
const zeros = /** @type {HTMLInputElement[]} */ ([...grid.querySelectorAll("input[data-zero]")]);

/** @type {Draft} */
let draft = { cells: {}, zeros: {}, second: null };

/** @param {HTMLInputElement} input */
const cellOf = (input) => `${input.dataset.bag} ${input.dataset.minute}`;
/** @type {Map<string, HTMLInputElement>} */
const byCell = new Map(inputs.map((input) => [cellOf(input), input]));

/** @param {string} text @param {number} count */
const counted = (text, count) => text.replace("{count}", String(count));

function remember() {
  const { cells, zeros: times, second } = draft;
  const empty = !Object.keys(cells).length && !Object.keys(times).length && second === null;
  void keep(home, empty ? null : draft);
}

function waiting() {
  const count = Object.keys(draft.cells).length;
  const { unsaved = "", none = "" } = status.dataset;
  status.textContent = count ? counted(unsaved, count) : none;
}

/** @param {Record<string, string>} cells what stands in which cell */
function sent(cells) {
  return JSON.stringify({
    cells: Object.entries(cells).map(([cell, text]) => {
      const [bag, minute] = cell.split(" ");
      const key = draft.cells[cell]?.[1] ?? newKey(Date.now());
      return { key, bag, minute: Number(minute), text };
    }),
    zeros: Object.entries(draft.zeros).map(([bag, text]) => ({ bag, text })),
  });
}

/** @param {string} address @param {string} body */
async function ask(address, body) {
  const answer = await fetch(address, {
    method: "POST",
    headers: { "content-type": "application/json", "x-barm": "1" },
    body,
  });
  if (!answer.ok) throw new Error(String(answer.status));
  return answer.json();
}

/** What stands in the first cells. */
const first = () => Object.fromEntries(Object.entries(draft.cells).map(([cell, [text]]) => [cell, text]));

let number = 0;

/** Asks what is typed means, and marks it in words. */
async function look() {
  number += 1;
  const own = number;
  try {
    const told = await ask(`${home}/look`, sent(first()));
    if (own !== number || draft.second) return;
    mark(told);
  } catch {
    if (own === number) status.textContent = status.dataset.silent ?? "";
  }
}

/** @param {any} told */
function mark(told) {
  for (const input of inputs) input.className = "";
  for (const { bag, minute, state, odd } of told.cells) {
    const input = byCell.get(`${bag} ${minute}`);
    if (!input) continue;
    input.className = odd ? `${state} odd` : state;
    if (state === "bad") input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  }
  if (said.innerHTML !== told.said) said.innerHTML = told.said;
}

let soon = 0;

grid.addEventListener("input", (event) => {
  const input = event.target;
  if (!(input instanceof HTMLInputElement)) return;
  const text = input.value.trim();
  const there = input.dataset.there ?? "";
  if (input.dataset.zero) {
    if (text === "" || text === there) delete draft.zeros[input.dataset.zero];
    else draft.zeros[input.dataset.zero] = text;
  } else if (draft.second) {
    if (text) draft.second[cellOf(input)] = text;
    else delete draft.second[cellOf(input)];
  } else if (text === "" || text === there) delete draft.cells[cellOf(input)];
  // Another number is another entry, with a key of its own.
  else draft.cells[cellOf(input)] = [text, newKey(Date.now())];
  remember();
  if (draft.second) return;
  waiting();
  clearTimeout(soon);
  soon = setTimeout(look, 150);
});

// A cell that was emptied shows again what is on record: nothing is taken out.
grid.addEventListener("focusout", (event) => {
  const input = event.target;
  if (!(input instanceof HTMLInputElement) || draft.second) return;
  if (input.value.trim() === "") input.value = input.dataset.there ?? "";
});

let saving = false;

grid.addEventListener("submit", async (event) => {
  event.preventDefault();
  const by = event.submitter;
  const next = by instanceof HTMLElement && by.dataset.do === "next";
  if (saving || draft.second) return;
  if (!Object.keys(draft.cells).length) {
    if (next && root.dataset.next) location.assign(root.dataset.next);
    else waiting();
    return;
  }
  saving = true;
  number += 1;
  clearTimeout(soon);
  try {
    const told = await ask(home, sent(first()));
    for (const [bag, minute] of told.done) delete draft.cells[`${bag} ${minute}`];
    const left = Object.keys(draft.cells).length;
    if (!left) draft.zeros = {};
    remember();
    await keep(home, left ? draft : null);
    const to = next && !left && told.next ? told.next : home;
    if (left) {
      said.innerHTML = told.said;
      status.textContent = counted(status.dataset.left ?? "", left);
      for (const input of inputs) {
        const unsaved = cellOf(input) in draft.cells;
        if (!unsaved && input.value.trim()) input.dataset.there = input.value.trim();
        input.className = unsaved ? "bad" : "";
      }
    } else location.assign(`${to}?saved=${told.saved}&corrected=${told.corrected}`);
  } catch {
    status.textContent = status.dataset.silent ?? "";
  }
  saving = false;
});

/** Shows the first time, or the second. */
function show() {
  const blind = draft.second !== null;
  root.classList.toggle("blind", blind);
  for (const input of inputs) {
    const cell = cellOf(input);
    input.className = "";
    input.value = blind ? draft.second?.[cell] ?? "" : draft.cells[cell]?.[0] ?? input.dataset.there ?? "";
  }
  for (const input of zeros) input.value = draft.zeros[input.dataset.zero ?? ""] ?? input.dataset.there ?? "";
  for (const one of saves) /** @type {HTMLElement} */ (one).hidden = blind;
  element("again").hidden = blind;
  element("again-lead").hidden = !blind;
  element("compare").hidden = !blind;
  element("again-leave").hidden = !blind;
  said.hidden = blind;
  if (!blind) waiting();
  else status.textContent = "";
}

/** The first cell with nothing in it. */
const begin = () => (inputs.find((input) => input.value === "") ?? inputs[0])?.focus();

element("again").addEventListener("click", () => {
  if (!Object.keys(draft.cells).length) {
    status.textContent = status.dataset.empty ?? "";
    return;
  }
  draft.second = {};
  element("differ").hidden = true;
  remember();
  show();
  begin();
});

element("again-leave").addEventListener("click", () => {
  draft.second = null;
  remember();
  show();
  void look();
});

/** @param {Record<string, string>} cells */
async function meant(cells) {
  const told = await ask(`${home}/look`, sent(cells));
  /** @type {Record<string, {text: string, mm: number | null, name: string}>} */
  const all = {};
  for (const { bag, minute, mm } of told.cells) {
    const cell = `${bag} ${minute}`;
    all[cell] = { text: cells[cell], mm, name: byCell.get(cell)?.dataset.name ?? cell };
  }
  return all;
}

element("compare").addEventListener("click", async () => {
  let pairs;
  try {
    // What is on record already and was typed again is no difference if it says the same.
    const second = { ...draft.second };
    const once = first();
    for (const [cell, text] of Object.entries(second)) {
      if (!(cell in once) && byCell.get(cell)?.dataset.there === text) delete second[cell];
    }
    pairs = differences(await meant(once), await meant(second));
  } catch {
    status.textContent = status.dataset.silent ?? "";
    return;
  }
  draft.second = null;
  remember();
  show();
  const settled = (/** @type {string | undefined} */ says) => {
    element("differ").hidden = true;
    status.textContent = says ?? "";
    /** @type {HTMLElement | undefined} */ (saves[0])?.focus();
    void look();
  };
  if (!pairs.length) settled(status.dataset.same);
  choices(element("differ"), pairs, (cell, text) => {
    const input = byCell.get(cell);
    if (text) draft.cells[cell] = [text, newKey(Date.now())];
    else delete draft.cells[cell];
    if (input) input.value = text || input.dataset.there || "";
    remember();
  }, () => settled(status.dataset.chosen));
});

addEventListener("click", (event) => {
  const button = event.target instanceof Element ? event.target.closest("button[data-back]") : null;
  if (!(button instanceof HTMLElement)) return;
  const input = byCell.get(`${button.dataset.of} ${button.dataset.at}`);
  if (!input) return;
  input.value = button.dataset.back ?? "";
  input.dispatchEvent(new Event("input", { bubbles: true }));
  input.focus();
});

moves(grid, () => /** @type {HTMLElement | null} */ (saves[0] ?? null));
files(root.dataset.file ?? "");

const before = await kept(home);
if (before) {
  // Cells that left the sheet meanwhile stay kept and are sent: the program says what it thinks.
  draft = before;
  show();
  if (!draft.second) void look();
}
begin();
root.dataset.ready = "1";
