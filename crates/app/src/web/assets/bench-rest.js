// @ts-check
// The parts of the bench page beside clock and pad: steps, guess, odd things, what was written,
// and what comes after the last reading.
import { bagOf, guess, oddBack, page, poured, show, tapOdd, vent } from "./bench.js";
import { heightOf } from "./bench-ask.js";
import { readingName } from "./bench-page.js";
import { el, icon, sign } from "./bench-draw.js";
import { markIcon } from "./bench-look.js";
import { mmText, spoken, t, timeText } from "./bench-words.js";
/** @typedef {import("./bench-kinds.js").Bag} Bag */
/** @typedef {import("./bench-kinds.js").Height} Height */

/** Key of the word for each odd thing, in the order in which they are offered. */
const ODD = { leak: "odd-leak", spill: "odd-spill", foam: "odd-foam", late: "odd-late", bumped: "odd-bumped", "not-read": "odd-not-read" };
const LIES = { bench: "step-bench", towel: "step-towel", tray: "step-tray" };

/** @param {string} word */
export function oddName(word) {
  return t(ODD[/** @type {keyof typeof ODD} */ (word)] ?? word);
}

/** @param {Bag} bag */
function things(bag) {
  const said = bag.dry.map(({ amount, thing }) => t("thing-of", { amount, thing: thing[spoken()] ?? thing.en }));
  return said.length > 0 ? said.join(", ") : t("thing-nothing");
}

/**
 * Every step where the plan gives them; else the group's own plan.
 * @param {string} stretch
 */
export function steps(stretch) {
  if (stretch !== "before") return [];
  const { inquiry, bags } = page.scene;
  if (bags.length === 0) return [];
  if (inquiry === "guided" || inquiry === "open") return plan(bags);
  const same = (/** @type {(bag: Bag) => string} */ say) => {
    const said = [...new Set(bags.map(say))];
    return said.length === 1 ? [el("li", {}, said[0])] : bags.map((bag) => el("li", {}, `${bag.letter}: ${say(bag)}`));
  };
  const step = (/** @type {string} */ words) => el("li", {}, words);
  return [
    el("h2", {}, t("bench-steps")),
    el("ol", { class: "todo" },
      el("li", {}, t("step-goggles"), " ", icon("goggles")),
      step(t("step-labels")),
      el("li", {}, t("step-each"),
        el("ul", { class: "plain planned" }, ...bags.map((bag) =>
          el("li", {}, el("b", {}, markIcon(bag.look, bag.hollow), ` ${bag.letter}`), el("span", {}, things(bag)))))),
      ...same(water),
      step(t("step-close")),
      step(t("step-rub")),
      ...same((bag) => t(LIES[bag.lies])),
      step(t("step-zero"))),
  ];
}

/** Farther from the plan than this (°C), it is asked whether the unit is right. */
const FAR = 15;
/** Hotter than this (°C) burns skin within seconds and kills yeast: it is asked as well. */
const HOT = 60;

/**
 * How warm the water was at pouring: one number, and the unit is the tap that writes it.
 * @param {string} stretch
 */
export function pouring(stretch) {
  const { bags } = page.whole;
  if (stretch !== "before" || page.zeroOpen) return [];
  return [...new Set(bags.map((bag) => bag.water.degrees))].flatMap((degrees, n) => {
    const same = bags.filter((bag) => bag.water.degrees === degrees);
    const is = same[0].poured;
    const bad = page.pourFault?.[0] === n;
    const kept = page.kept.some((one) => one.state === "kept" && one.entry.what === "made" && one.entry.bag === same[0].code);
    const tap = (/** @type {"C" | "F"} */ unit) => el("button", { class: "btn", type: "button", "data-k": `pour-${n}-${unit}`, click: () => {
      const field = /** @type {HTMLInputElement} */ (document.getElementById(`pour-${n}`));
      const number = /^\d{1,3}([.,]\d)?$/.test(field.value.trim()) ? Number(field.value.trim().replace(",", ".")) : NaN;
      const celsius = Math.round(unit === "F" ? (number - 32) / 0.18 : number * 10) / 10;
      const planned = parseFloat(degrees);
      const hot = celsius > HOT && planned <= HOT;
      const far = hot ? t("bench-pour-hot") : t("bench-pour-far", { degrees });
      // Tapped once more, it is what the thermometer says.
      const sure = page.pourFault?.[1] === far || (!hot && Math.abs(celsius - planned) <= FAR);
      const fault = !(celsius >= 0 && celsius <= 100) ? t("bench-pour-fault") : sure ? "" : far;
      page.pourFault = fault ? [n, fault] : null;
      if (fault) show();
      else poured(same, celsius);
    } }, `°${unit}`);
    return [
      el("label", { for: `pour-${n}` }, t("bench-pour", { bags: same.map((bag) => bag.letter).join(", ") })),
      el("div", { class: "btns" },
        el("span", { class: bad ? "fld bad" : "fld" }, el("input", { id: `pour-${n}`, "data-k": `pour-${n}`, inputmode: "decimal", autocomplete: "off", size: "5", maxlength: "5", "aria-invalid": bad ? "true" : null, "aria-describedby": bad ? "pour-fault" : null })),
        tap("C"), tap("F"),
        is !== null && el("span", { role: "status" }, sign(kept ? "kept" : "saved"), ` ${mmText(is)} °C`)),
      bad && el("p", { id: "pour-fault", role: "alert" }, page.pourFault?.[1]),
    ];
  });
}

/** @param {Bag} bag */
function water(bag) {
  return t("step-water", { amount: bag.water.amount, degrees: bag.water.degrees });
}

/** @param {Bag[]} bags */
function plan(bags) {
  const asked = [...new Set(bags.map((bag) => bag.asks).filter((asks) => asks !== ""))];
  return [
    el("h2", {}, t("bench-plan")),
    ...asked.map((asks) => el("p", { class: "asks" }, asks)),
    el("p", { class: "goggles" }, icon("goggles"), ` ${t("step-goggles")}`),
    el("ul", { class: "plain planned" }, ...bags.map((bag) =>
      el("li", {},
        el("b", {}, markIcon(bag.look, bag.hollow), ` ${bag.letter}`),
        el("span", {}, `${t("step-dry", { things: things(bag) })} ${water(bag)} ${t(LIES[bag.lies])}`)))),
    el("p", {}, `${t("step-close")} ${t("step-zero")}`),
  ];
}

/** @typedef {{expects: [string, number][], wrong: string[], because: string, some: boolean}} Typed */

/** What stands in the fields of the guess, saved or not. @returns {Typed} */
export function typedGuess() {
  /** @type {Typed} */
  const typed = { expects: [], wrong: [], because: "", some: false };
  for (const { code } of page.whole.bags) {
    const field = document.getElementById(`guess-${code}`);
    const value = field instanceof HTMLInputElement ? field.value : "";
    const mm = heightOf(value);
    if (mm !== null) typed.expects.push([code, mm]);
    else typed.wrong.push(code);
    typed.some ||= value.trim() !== "";
  }
  const why = document.getElementById("guess-why");
  if (why instanceof HTMLTextAreaElement) typed.because = why.value;
  return typed;
}

/** Saves a guess that is whole; else shows what is missing and says no. @param {Typed} typed */
export function saveGuess(typed) {
  page.guessFault = typed.wrong;
  if (typed.wrong.length > 0) return false;
  guess(typed.expects, typed.because);
  return true;
}

/** @param {string} stretch */
export function guessing(stretch) {
  const { guess: said, bags } = page.whole;
  if (bags.length === 0) return [];
  const title = el("h2", {}, t("bench-guess"));
  const own = (/** @type {string} */ code) => bags.find((bag) => bag.code === code)?.letter ?? code;
  const says = said ? said.expects.map(([code, mm]) => t("bench-guess-says", { bag: own(code), mm: mmText(mm) })).join(" ") : t("bench-guess-none");
  const zeros = bags.flatMap((bag) => (bag.zero ? [bag.zero.at_ms] : []));
  if (stretch !== "before" || zeros.length > 0) {
    const time = timeText(Math.min(...zeros) - (page.skew.offset ?? 0));
    return [title, el("div", { class: "seal" }, sign("lock"), el("p", {}, says, " ", el("span", { class: "nowrap" }, t("state-locked", { time }))))];
  }
  const send = (/** @type {Event} */ event) => {
    event.preventDefault();
    saveGuess(typedGuess());
    show();
  };
  const bad = (/** @type {string} */ code) => page.guessFault.includes(code);
  return [
    title,
    said && el("p", {}, sign("saved"), ` ${says}`),
    el("form", { submit: send },
      el("p", {}, t("bench-guess-lead")),
      el("div", { class: "guesses" }, ...bags.map((bag) =>
        el("div", {},
          el("label", { for: `guess-${bag.code}` }, markIcon(bag.look, bag.hollow), ` ${t("bench-guess-bag", { bag: bag.letter })}`),
          el("span", { class: bad(bag.code) ? "fld bad" : "fld" }, el("input", { id: `guess-${bag.code}`, "data-k": `guess-${bag.code}`, inputmode: "decimal", autocomplete: "off", maxlength: "6", "aria-invalid": bad(bag.code) ? "true" : null, "aria-describedby": bad(bag.code) ? "guess-fault" : null }))))),
      page.guessFault.length > 0 && el("p", { id: "guess-fault", role: "alert" }, t("bench-guess-fault")),
      el("label", { for: "guess-why" }, t("bench-guess-why")),
      el("span", { class: "fld wide" }, el("textarea", { id: "guess-why", "data-k": "guess-why", rows: "2", maxlength: "500" })),
      el("div", { class: "btns" }, el("button", { class: "btn", type: "submit", "data-k": "guess-save" }, t("bench-guess-save"))),
      el("p", { class: "soft small" }, t("bench-guess-locks"))),
  ];
}

/**
 * @param {import("./bench.js").Target | null} to
 * @param {string} stretch
 */
export function odd(to, stretch) {
  const code = to?.code ?? page.chosen ?? page.whole.bags[0]?.code ?? null;
  const bag = bagOf(code);
  if (!bag || stretch === "before") return [];
  const noted = page.whole.bags.flatMap((one) => one.odd.map(([at, word, key]) => ({ at, word, key, letter: one.letter, code: one.code })));
  noted.sort((a, b) => b.at - a.at);
  return [
    el("h2", {}, t("bench-odd")),
    el("p", { class: "soft small" }, t("bench-odd-lead", { bag: bag.letter })),
    el("div", { class: "odd" }, ...Object.keys(ODD).map((word) =>
      el("button", { class: "btn quiet", type: "button", "data-k": `odd-${word}`, click: () => tapOdd(bag.code, word) }, icon(word), oddName(word)))),
    noted.length > 0 && el("div", { class: "noted", role: "status" }, el("ul", { class: "plain" }, ...noted.slice(0, 4).map(({ at, word, key, letter, code }) =>
      el("li", {}, t("bench-odd-noted", { odd: oddName(word), bag: letter, time: timeText(at - (page.skew.offset ?? 0)) }), " ",
        key && page.whole.clock.ended_ms === null && el("button", { class: "was", type: "button", "data-k": `back-${key}`, click: () => oddBack(code, key) }, t("bench-odd-back")))))),
  ];
}

/** What was written, each height a button to change it. */
export function wrote() {
  const { bags } = page.whole;
  if (!bags.some((bag) => bag.zero)) return [];
  /** The minute of a reading in between is the one that it was made in. */
  const minuteOf = (/** @type {Bag} */ bag, /** @type {Height} */ one) => one.planned ?? Math.max(1, Math.round((one.at_ms - (bag.zero?.at_ms ?? 0)) / 60_000));
  const read = bags.flatMap((bag) => bag.readings.map((one) => minuteOf(bag, one)));
  const minutes = [0, ...[...new Set(read)].sort((a, b) => a - b)];
  const cell = (/** @type {Bag} */ bag, /** @type {Height} */ height, /** @type {boolean} */ zero) => {
    const kept = page.kept.some((one) => one.state === "kept" && (one.key === height.key || one.entry.of === height.key));
    const target = /** @type {import("./bench.js").Target} */ ({ code: bag.code, what: "correction", planned: height.planned, of: height.key, says: height.mm, zero });
    const old = height.was.filter((mm) => Math.abs(mm - height.mm) > 1e-9);
    return el("button", { class: "was", type: "button", "data-k": `was-${height.key}`, click: () => {
      page.change = target;
      page.guard = null;
      page.tens = null;
      page.chosen = bag.code;
      show();
      document.getElementById("ask")?.scrollIntoView({ block: "nearest" });
    } },
      el("span", { class: "vh" }, `${t("bench-change")}: ${bag.letter}, ${readingName(target)}, `),
      `${mmText(height.mm)} mm`,
      sign(kept ? "kept" : "saved"),
      el("span", { class: "vh" }, t(kept ? "state-kept" : "state-saved")),
      old.length > 0 && el("small", { class: "soft" }, t("bench-changed", { mm: mmText(old[old.length - 1]) })));
  };
  const row = (/** @type {number} */ minute) =>
    el("tr", {},
      el("th", { scope: "row" }, `${minute} min`),
      ...bags.map((bag) => {
        const found = minute === 0 ? [bag.zero, ...bag.other_zeros] : bag.readings.filter((one) => minuteOf(bag, one) === minute);
        return el("td", {}, ...found.flatMap((one) => (one ? [cell(bag, one, minute === 0)] : [])));
      }));
  return [
    el("h2", {}, t("bench-readings")),
    el("div", { class: "fixw", tabindex: bags.length > 3 ? "0" : null, role: bags.length > 3 ? "group" : null, "aria-label": bags.length > 3 ? t("bench-readings") : null },
      el("table", { class: "wrote" },
        el("thead", {}, el("tr", {}, el("td", {}), ...bags.map((bag) => el("th", { scope: "col" }, bag.letter)))),
        el("tbody", {}, ...minutes.map(row)))),
  ];
}

/** @param {string} stretch */
export function after(stretch) {
  const bags = page.whole.bags.filter((bag) => !bag.lost);
  if (bags.length === 0 || stretch === "before") return [];
  const closed = bags.filter((bag) => !bag.vented);
  const over = stretch === "after";
  return [
    el("h2", {}, t("bench-after")),
    closed.length === 0
      ? el("p", { role: "status" }, sign("saved"), ` ${t("bench-after-done")}`)
      : el("p", {}, icon("vent"), ` ${t("bench-after-open")} `, icon("goggles"), ` ${t("bench-after-goggles")}`),
    over && closed.length > 0 && el("p", { class: "soft" }, t("bench-after-tap")),
    over && closed.length > 0 && el("div", { class: "btns" }, ...closed.map((bag) =>
      el("button", { class: "btn", type: "button", "data-k": `vent-${bag.code}`, click: () => vent(bag.code) }, t("bench-after-bag", { bag: bag.letter })))),
  ];
}
