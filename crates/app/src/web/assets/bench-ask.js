// @ts-check
// Writing a height: two taps, and a question where it looks odd.
import { bagOf, page, settle, show, write } from "./bench.js";
import { readingName } from "./bench-page.js";
import { el, sign } from "./bench-draw.js";
import { saveGuess, typedGuess } from "./bench-rest.js";
import { mmText, t } from "./bench-words.js";
/** @typedef {import("./bench.js").Target} Target */

/** @param {Target | null} to */
export function asking(to) {
  const { bags, clock } = page.whole;
  const zeros = bags.filter((bag) => !bag.zero && !bag.lost && !bag.vented);
  if (page.guard) return [guarded()];
  if (!to) {
    const all = [written()];
    if (zeros.length > 0) {
      if (page.guessAsked && !page.whole.guess) all.push(el("p", { role: "alert" }, t("bench-guess-skip")));
      all.push(button("zero-go", t("bench-zero-go"), beginZero, "btn main"));
    } else if (page.chosen && clock.ended_ms === null && bagOf(page.chosen)?.vented === false) {
      all.push(button("between", t("bench-between"), () => (page.between = true), "btn quiet"));
    }
    return all;
  }
  const bag = bagOf(to.code);
  if (!bag) return [];
  const question = page.change
    ? t("bench-change-ask", { bag: bag.letter, reading: readingName(to) })
    : t("bench-ask", { bag: bag.letter });
  const hint = page.change ? t("bench-change-lead", { mm: mmText(to.says ?? 0) }) : t("bench-how");
  return [
    written(),
    el("div", { class: "ask" },
      el("div", {}, el("h2", { id: "q" }, question), el("p", { class: "soft" }, to.what === "zero" ? `${cap(readingName(to))}. ${hint}` : hint)),
      page.typing ? null : digits()),
    page.typing ? typed() : pad(),
    page.change && button("change-stop", t("bench-change-stop"), () => (page.change = null), "btn quiet"),
  ];
}

/** The first zero locks the guess: what is typed of it is kept before, and without one it asks once. */
function beginZero() {
  if (!page.whole.guess && page.whole.bags.every((bag) => !bag.zero)) {
    const typed = typedGuess();
    if (typed.some && !saveGuess(typed)) return;
    if (!typed.some && !page.guessAsked) {
      page.guessAsked = true;
      return;
    }
  }
  page.zeroOpen = true;
}

/** @param {string} text */
function cap(text) {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/**
 * @param {string} key
 * @param {string} words
 * @param {() => void} change
 * @param {string} look
 */
function button(key, words, change, look) {
  return el("button", { class: look, type: "button", "data-k": key, click: () => {
    change();
    show();
  } }, words);
}

/** What was written last, with a way to change it. */
function written() {
  const last = page.last;
  const bag = last && bagOf(last.code);
  if (!last || !bag || page.change) return null;
  const kept = page.kept.some((one) => one.state === "kept" && (one.key === last.key || one.entry.of === last.key));
  const height = [bag.zero, ...bag.readings].find((one) => one !== null && one.key === last.key);
  const mm = height ? height.mm : last.mm;
  const state = kept
    ? el("span", { class: "st kept" }, sign("kept"), t("state-kept"))
    : el("span", { class: "st saved" }, sign("saved"), t("state-saved"));
  return el("div", { class: "written" },
    el("span", { role: "status" }, `${t("bench-written", { bag: bag.letter, mm: mmText(mm) })} `, state),
    !height ? null : button("change-last", t("bench-change"), () => {
      const zero = height === bag.zero;
      page.change = { code: bag.code, what: "correction", planned: height.planned, of: height.key, says: height.mm, zero };
    }, "btn quiet"));
}

function digits() {
  const tens = page.tens === null ? " " : String(page.tens);
  return el("div", { class: "wr", "aria-hidden": "true" },
    el("i", { class: page.tens === null ? "on" : null }, tens),
    el("i", { class: page.tens === null ? null : "on" }, " "),
    el("small", {}, "mm"));
}

function pad() {
  const tens = (/** @type {number} */ digit) =>
    el("button", { class: "key", type: "button", "data-k": `tens-${digit}`, "aria-label": `${t("bench-tens")} ${digit}`, "aria-pressed": String(page.tens === digit), "aria-disabled": page.writing ? "true" : null, click: () => {
      if (page.writing) return;
      page.tens = digit;
      show();
    } }, String(digit));
  const ones = (/** @type {number} */ digit) =>
    el("button", { class: "key", type: "button", "data-k": `ones-${digit}`, "aria-label": `${t("bench-ones")} ${digit}`, "aria-disabled": String(page.tens === null || page.writing), click: () => page.tens !== null && write(page.tens * 10 + digit) }, String(digit));
  return el("div", {},
    el("div", { class: "pad", role: "group", "aria-label": t("bench-height") },
      el("span", { class: "lab" }, t("bench-tens")), ...[0, 1, 2, 3, 4].map(tens),
      el("span", { class: "lab two" }, t("bench-ones")), ...[0, 1, 2, 3, 4, 5, 6, 7, 8, 9].map(ones)),
    el("div", { class: "under" },
      el("p", { class: "soft small" }, t("bench-two-taps")),
      button("type", t("bench-type"), () => (page.typing = true), "btn quiet")));
}

/** A height of 50 or more, or with a half. */
function typed() {
  const send = (/** @type {Event} */ event) => {
    event.preventDefault();
    const field = /** @type {HTMLInputElement} */ (document.getElementById("height"));
    const mm = heightOf(field.value);
    page.typeFault = mm === null;
    if (mm === null) show();
    else write(mm);
  };
  return el("form", { class: "typed", submit: send },
    el("label", { for: "height" }, t("bench-type-label")),
    el("span", { class: page.typeFault ? "fld bad" : "fld" }, el("input", { id: "height", inputmode: "decimal", autocomplete: "off", maxlength: "6", "data-k": "height", "aria-invalid": page.typeFault ? "true" : null, "aria-describedby": page.typeFault ? "height-fault" : null })),
    page.typeFault && el("p", { id: "height-fault", role: "alert" }, t("bench-type-fault")),
    el("div", { class: "btns" },
      el("button", { class: "btn", type: "submit", "data-k": "type-go" }, t("bench-type-go")),
      button("keys", t("bench-keys"), () => {
        page.typing = false;
        page.typeFault = false;
      }, "btn quiet")));
}

/**
 * A height in mm to a half, with a point or a comma; nothing that a ruler does not show.
 * @param {string} text
 * @returns {number | null}
 */
export function heightOf(text) {
  const plain = text.trim().replace(",", ".").replace(/\s*mm$/i, "");
  if (!/^\d{1,3}(\.\d)?$/.test(plain)) return null;
  const mm = Number(plain);
  return mm <= 250 ? mm : null;
}

/** The question where a height looks odd. No answer is picked beforehand. */
function guarded() {
  const guard = /** @type {NonNullable<typeof page.guard>} */ (page.guard);
  const { slip, mm, target } = guard;
  const bag = bagOf(target.code);
  const choice = (/** @type {string} */ key, /** @type {string} */ words, /** @type {() => void} */ click) =>
    el("button", { class: "btn", type: "button", "data-k": key, click }, words);
  const choices = [choice("again", t("guard-again"), () => settle("again"))];
  choices.push(choice("keep", t("guard-keep", { mm: mmText(mm) }), () => settle("keep")));
  const likely = slip.meant[0];
  const values = { mm: mmText(mm), cm: mmText(mm), inch: mmText(mm) };
  let question = "";
  if (slip.kind === "unit" && likely.in === "cm") question = t("guard-centimeter", values);
  else if (slip.kind === "unit" && (likely.in === "in" || likely.in === "eighths")) question = t("guard-inch", values);
  else if (slip.kind === "fell") question = t("guard-fell");
  else if (slip.kind === "jumped") question = t("guard-jumped");
  else if (slip.kind === "high-zero") question = t("guard-high-zero");
  else if (slip.kind === "too-high" || slip.kind === "unit") question = t("guard-too-high");
  for (const one of slip.meant.slice(0, 2)) {
    const words = {
      cm: () => t("guard-write-centimeter", { cm: mmText(mm), mm: mmText(one.mm) }),
      in: () => t("guard-write-inch", { inch: mmText(mm), mm: mmText(one.mm) }),
      eighths: () => t("guard-write-inch", { inch: `${mmText(mm)}/8`, mm: mmText(one.mm) }),
    }[one.in] ?? (() => t("guard-keep", { mm: mmText(one.mm) }));
    choices.push(choice(`write-${one.mm}`, words(), () => settle("write", one.mm)));
  }
  if (slip.taps.includes("leak")) choices.push(choice("leak", t("guard-leak", { mm: mmText(mm) }), () => settle("leak")));
  return el("div", { class: "guard", id: "guard", tabindex: "-1", role: "alertdialog", "aria-labelledby": "guard-says" },
    el("p", { id: "guard-says" }, el("b", {}, t("guard-please")), " ", before(bag, guard), question),
    el("div", { class: "btns" }, ...choices));
}

/**
 * @param {import("./bench-kinds.js").Bag | null} bag
 * @param {NonNullable<typeof page.guard>} guard
 */
function before(bag, guard) {
  if (!bag?.zero) return "";
  const zero = bag.zero;
  if (guard.target.zero) return `${t("guard-before-zero", { mm: mmText(zero.mm) })} `;
  if (guard.target.what === "zero") return "";
  // What is corrected was read then, not now.
  const own = bag.readings.find((one) => one.key === guard.target.of);
  const when = own ? own.at_ms : guard.at + (page.skew.offset ?? 0);
  const earlier = [zero, ...bag.readings].filter((one) => one.key !== guard.target.of && one.at_ms <= when);
  const last = earlier[earlier.length - 1];
  if (!last) return "";
  const minute = last.planned ?? Math.round((last.at_ms - zero.at_ms) / 60_000);
  if (last === zero) return `${t("guard-before-zero", { mm: mmText(last.mm) })} `;
  return `${t("guard-before", { minute, mm: mmText(last.mm) })} `;
}
