// @ts-check
// The group's own curve, as a picture and in words.
import { el, svg } from "./bench-draw.js";
import { hue, mark, n } from "./bench-look.js";
import { mmText, t } from "./bench-words.js";
/** @typedef {import("./bench-kinds.js").Bag} Bag */
/** @typedef {import("./bench-kinds.js").Height} Height */

const INK = "#17233B";
const SOFT = "#4A5266";
const RULE = "#D3C9B4";
const STRONG = "#857C69";

/**
 * @param {Bag} bag
 * @returns {[number, number, Height][]} minutes after zero, height (mm)
 */
export function points(bag) {
  const zero = bag.zero;
  if (!zero) return [];
  return [zero, ...bag.readings].map((one) => [(one.at_ms - zero.at_ms) / 60_000, one.mm, one]);
}

/** @param {Bag} bag */
export function inWords(bag) {
  const all = points(bag);
  if (all.length < 2 || !bag.zero) return null;
  const [minute, mm] = all[all.length - 1];
  const rise = mm - bag.zero.mm;
  const values = { bag: bag.letter, mm: mmText(Math.abs(rise)), minute: Math.round(minute) };
  if (rise > 0) return t("bench-curve-rose", values);
  return t(rise < 0 ? "bench-curve-fell" : "bench-curve-flat", values);
}

/**
 * @param {Bag[]} bags
 * @param {number} last the last planned minute
 * @param {number} room how wide it can be (px)
 * @returns {SVGElement}
 */
export function curve(bags, last, room) {
  const wide = room >= 520;
  const [w, h, font] = wide ? [620, 300, 15] : [330, 262, 14];
  const [left, right, top, bottom] = [44, wide ? 99 : 92, 12, 38];
  const all = bags.flatMap((bag) => points(bag).map(([minute, mm]) => [minute, mm]));
  const most = Math.max(18, ...all.map(([, mm]) => mm + 2));
  const step = most <= 30 ? 5 : most <= 60 ? 10 : most <= 150 ? 25 : 50;
  const yMax = Math.ceil(most / step) * step;
  const xMax = Math.max(last, 4, ...all.map(([minute]) => Math.ceil(minute)));
  const x = (/** @type {number} */ minute) => left + (minute / xMax) * (w - left - right);
  const y = (/** @type {number} */ mm) => h - bottom - (mm / yMax) * (h - top - bottom);
  const text = (/** @type {number} */ a, /** @type {number} */ b, /** @type {string} */ words, more = {}) =>
    svg("text", { x: n(a), y: n(b), "font-size": font, fill: SOFT, ...more }, words);
  /** @type {SVGElement[]} */
  const inside = [];
  for (let mm = 0; mm <= yMax; mm += step) {
    if (mm > 0) inside.push(svg("line", { x1: left, x2: n(w - right), y1: n(y(mm)), y2: n(y(mm)), stroke: RULE }));
    inside.push(text(left - 8, y(mm) + font * 0.35, String(mm), { "text-anchor": "end" }));
  }
  inside.push(text(left - 8, y(yMax) + font * 1.4, "mm", { "text-anchor": "end", "font-size": n(font * 0.92) }));
  const every = [1, 2, 4, 5, 10, 15, 20, 30, 60].find((one) => xMax / one <= (wide ? 8 : 6.2)) ?? 60;
  for (let minute = 0; minute <= xMax; minute += every) {
    const end = minute + every > xMax;
    inside.push(svg("line", { x1: n(x(minute)), x2: n(x(minute)), y1: n(y(0)), y2: n(y(0) + 5), stroke: STRONG }));
    inside.push(text(x(minute), y(0) + 20, end ? `${minute} min` : String(minute), { "text-anchor": "middle" }));
  }
  inside.push(svg("line", { x1: left, x2: n(w - right), y1: n(y(0)), y2: n(y(0)), stroke: INK, "stroke-width": 1.5 }));
  const shown = bags.filter((bag) => bag.zero);
  const lines = shown.map((bag) => points(bag).map(([minute, mm]) => [x(minute), y(Math.max(0, mm - 1))]));
  const word = t("bench-curve-bench");
  const free = placeFor(lines, left + 6, w - right, word.length * font * 0.5, y(0) - 6 - font);
  if (free !== null) inside.push(text(free, y(0) - 5, word, { "font-size": n(font * 0.92) }));
  for (const bag of shown) {
    const color = hue(bag.look);
    const through = points(bag);
    inside.push(
      svg("path", { d: `M${through.map(([a, b]) => `${n(x(a))} ${n(y(b))}`).join("L")}`, fill: "none", stroke: color, "stroke-width": 2, "stroke-linejoin": "round" }),
    );
    for (const [a, b] of through) {
      inside.push(
        svg("path", { d: `M${n(x(a))} ${n(y(Math.max(0, b - 1)))}V${n(y(b + 1))}M${n(x(a) - 4)} ${n(y(Math.max(0, b - 1)))}h8M${n(x(a) - 4)} ${n(y(b + 1))}h8`, stroke: color, "stroke-width": 1.2, fill: "none" }),
      );
    }
  }
  for (const bag of shown) {
    for (const [a, b, height] of points(bag)) {
      inside.push(...mark(bag.look, bag.hollow, x(a), y(b), wide ? 5.5 : 5));
      if (height.rival) {
        inside.push(svg("circle", { cx: n(x(a)), cy: n(y(b)), r: 11, fill: "none", stroke: INK, "stroke-width": 1.3, "stroke-dasharray": "2.5 2" }));
      }
    }
  }
  inside.push(...labels(shown, x, y, w - right, font));
  const title = svg("title", { id: "curve-title" }, t("bench-curve-title"));
  const said = shown.map((bag) => {
    const list = points(bag).map(([minute, mm]) => t("bench-curve-point", { mm: mmText(mm), minute: Math.round(minute) }));
    return t("bench-curve-list", { bag: bag.letter, list: list.join(", ") });
  });
  const description = svg("desc", { id: "curve-desc" }, said.join(" "));
  return svg("svg", { class: "chart", viewBox: `0 0 ${w} ${h}`, role: "img", "aria-labelledby": "curve-title curve-desc" }, title, description, ...inside);
}

/**
 * The first place on the axis where a word meets no line and no bar; none if there is none.
 * @param {number[][][]} lines lower ends of the bars of each bag, from left to right
 * @param {number} from
 * @param {number} to
 * @param {number} wide how wide the word is
 * @param {number} top where it ends above
 */
function placeFor(lines, from, to, wide, top) {
  const meets = (/** @type {number} */ start, /** @type {number[][]} */ line) =>
    line.some(([a, b], at) => {
      const [c, d] = line[at + 1] ?? [a, b];
      return a < start + wide + 8 && c > start - 8 && Math.max(b, d) > top;
    });
  for (let start = from; start + wide < to; start += 6) {
    if (!lines.some((line) => meets(start, line))) return start;
  }
  return null;
}

/**
 * Names at the ends of the lines, pushed apart, each with a thin leader.
 * @param {Bag[]} bags
 * @param {(minute: number) => number} x
 * @param {(mm: number) => number} y
 * @param {number} from
 * @param {number} font
 */
function labels(bags, x, y, from, font) {
  const ends = bags.map((bag) => {
    const all = points(bag);
    const [minute, mm] = all[all.length - 1];
    return { bag, minute, mm, at: y(mm) };
  });
  ends.sort((a, b) => a.at - b.at);
  const apart = font * 2.45;
  for (let at = 1; at < ends.length; at += 1) {
    ends[at].at = Math.max(ends[at].at, ends[at - 1].at + apart);
  }
  const low = y(0) - 4;
  for (let at = ends.length - 1; at >= 0; at -= 1) {
    const floor = at === ends.length - 1 ? low : ends[at + 1].at - apart;
    ends[at].at = Math.min(ends[at].at, floor);
  }
  return ends.flatMap(({ bag, minute, mm, at }) => [
    svg("path", { d: `M${n(x(minute) + 8)} ${n(y(mm))}L${n(from + 6)} ${n(at)}`, stroke: STRONG, "stroke-width": 1, "stroke-dasharray": "1 3", "stroke-linecap": "round", fill: "none" }),
    ...mark(bag.look, bag.hollow, from + 16, at, 4.6),
    svg("text", { x: n(from + 27), y: n(at - 1), "font-size": font, "font-weight": 600, fill: INK }, t("bench-curve-bag", { bag: bag.letter })),
    svg("text", { x: n(from + 27), y: n(at + font * 1.05), "font-size": n(font * 0.92), fill: SOFT }, `${mmText(mm)} mm`),
  ]);
}

/** @param {Bag[]} bags */
export function sentences(bags) {
  const said = bags.map(inWords).filter((one) => one !== null);
  if (said.length === 0) return el("p", { class: "soft" }, t("bench-curve-empty"));
  return el("p", {}, `${said.join(" ")} `, el("span", { class: "soft" }, t("bench-curve-ruler")));
}
