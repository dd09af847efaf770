// @ts-check
// Whether a height is hard to believe. It rests on the bag's own earlier heights, on what was
// tapped, and on the size of the bag: the rule that the teacher's computer has for groups, here so
// that it also asks when that computer is away. Both are held to the same cases.

/**
 * @typedef {object} Told
 * @property {string} key
 * @property {number} at_ms
 * @property {number} mm
 * @property {boolean} confirmed
 * @property {boolean} rival
 */

/**
 * @typedef {object} Slip
 * @property {"unit" | "too-high" | "high-zero" | "jumped" | "fell"} kind
 * @property {string} reading key of the height in question
 * @property {{in: string, mm: number}[]} meant what it may be instead, the likeliest first
 * @property {string[]} taps what may have happened
 * @property {number} by how much it rose or fell (mm)
 */

const FALL_MM = 3;
const BELOW_ZERO_MM = 1;
const JUMP_SHARE = 0.5;
const TOO_HIGH = 1.2;
const LOW_ZERO_MM = 3;
const HIGH_ZERO_SHARE = 0.5;
const QUICK_SHARE = 0.15;
const IN_LINE_SHARE = 0.25;
const TAPPED_AFTER_MS = 120_000;

/** Word, factor to millimeters, half of the finest mark (mm). */
/** @type {[string, number, number][]} */
const UNITS = [
  ["cm", 10, 0.5],
  ["point-lost", 0.1, 0.5],
  ["in", 25.4, 25.4 / 32],
  ["eighths", 25.4 / 8, 25.4 / 16],
];

/**
 * @param {number} wrote
 * @param {number} near
 * @param {(mm: number, half: number, unit: string) => boolean} inLine
 */
function meant(wrote, near, inLine) {
  return UNITS.filter(([word]) => word !== "eighths" || whole(wrote))
    .map(([word, factor, half]) => ({ in: word, mm: Math.round(10 * wrote * factor) / 10, half }))
    .filter((one) => Math.abs(one.mm - wrote) > 0.01 && inLine(one.mm, one.half, one.in))
    .sort((a, b) => Math.abs(a.mm - near) - Math.abs(b.mm - near))
    .map(({ in: word, mm }) => ({ in: word, mm }));
}

/** @param {number} mm */
function whole(mm) {
  return Math.abs(mm - Math.round(mm)) < 0.01;
}

/**
 * Zero reading and readings in turn, each beside the last that can be believed.
 * @param {Told | null} zero
 * @param {Told[]} readings
 * @param {[number, string][]} odd
 * @param {number} full how high a bag of this size stands when it is full (mm)
 * @returns {Slip[]}
 */
export function hardToBelieve(zero, readings, odd, full) {
  /** @type {Slip[]} */
  const slips = [];
  if (!zero) return slips;
  /** @typedef {{key: string, at: number, mm: number, confirmed: boolean}} Believed */
  /** @type {Believed | null} */
  let before = null;
  /** @type {Believed | null} far from those before it; the next height tells whether it was misread */
  let doubted = null;
  /** @type {number | null} what the zero reading is taken for */
  let start = null;
  const tooHigh = (/** @type {number} */ mm) => mm > TOO_HIGH * full;
  /** @type {(kind: Slip["kind"], reading: string, more?: Partial<Slip>) => void} */
  const tell = (kind, reading, more = {}) => {
    slips.push({ kind, reading, meant: [], taps: [], by: 0, ...more });
  };
  /** @type {(height: Told) => number | null} */
  const first = (height) => {
    const low = height.mm > 0 && height.mm < LOW_ZERO_MM && !whole(height.mm);
    const high = height.key === zero.key && !tooHigh(height.mm) && height.mm > HIGH_ZERO_SHARE * full;
    if (!low && !high && !tooHigh(height.mm)) return height.mm;
    const may = meant(height.mm, LOW_ZERO_MM, (mm) => mm >= LOW_ZERO_MM && mm <= JUMP_SHARE * full);
    if (high) {
      tell("high-zero", height.key, { meant: may });
      return null;
    }
    if (may.length > 0) {
      tell("unit", height.key, { meant: may });
      return may[0].mm;
    }
    tell("too-high", height.key);
    return null;
  };
  /** @type {(height: Told, last: Believed) => number | null} */
  const after = (height, last) => {
    const rise = height.mm - last.mm;
    const is = far(height.mm, last);
    if (is === "") {
      lowZero(height, last);
      return height.mm;
    }
    if (doubted && far(height.mm, doubted) === "") return height.mm;
    const fell = is === "fell";
    if (tapped(odd, last.at, height.at_ms, fell)) return height.mm;
    const may = meant(height.mm, last.mm, (mm, half, unit) => {
      const step = mm - last.mm;
      const flat = start !== null && mm + half < start - BELOW_ZERO_MM;
      // A few millimeters of a leak look like eighths too often.
      const eighths = unit === "eighths" && fell && -rise <= FALL_MM;
      return step >= -FALL_MM - half && step <= IN_LINE_SHARE * full && !tooHigh(mm) && !flat && !eighths;
    });
    if (may.length > 0) {
      tell("unit", height.key, { meant: may, taps: fell ? ["leak", "bumped"] : [] });
      return may[0].mm;
    }
    if (tooHigh(height.mm)) {
      tell("too-high", height.key);
      return null;
    }
    const taps = fell ? ["leak", "bumped"] : ["foam"];
    tell(fell ? "fell" : "jumped", height.key, { taps, by: Math.abs(rise) });
    doubted = taken(height, height.mm);
    return null;
  };
  /** @type {(mm: number, from: Believed) => "" | "fell" | "risen"} */
  const far = (mm, from) => {
    const below = start !== null && start - mm > BELOW_ZERO_MM && from.mm - mm > BELOW_ZERO_MM;
    // A bag with water in it holds the card up: it can only have been lower to begin with.
    const nothing = mm === 0 && from.mm > BELOW_ZERO_MM;
    if (from.mm - mm > FALL_MM || below || nothing) return "fell";
    return mm - from.mm > JUMP_SHARE * full || tooHigh(mm) ? "risen" : "";
  };
  /** @type {(height: Told, mm: number) => Believed} */
  const taken = (height, mm) => ({ key: height.key, at: height.at_ms, mm, confirmed: height.confirmed });
  /** @type {(height: Told, last: Believed) => void} */
  const lowZero = (height, last) => {
    const quick = height.mm - last.mm > QUICK_SHARE * full;
    if (last.key !== zero.key || last.confirmed || last.mm >= LOW_ZERO_MM || !quick) return;
    const may = meant(zero.mm, height.mm, (mm) => mm >= LOW_ZERO_MM && mm - height.mm <= FALL_MM);
    if (may.length > 0) tell("unit", zero.key, { meant: may });
  };
  for (const height of [zero, ...readings]) {
    if (height.rival) continue;
    /** @type {number | null} */
    let believed = height.mm;
    if (!height.confirmed) believed = before ? after(height, before) : first(height);
    if (believed !== null) {
      start ??= believed;
      before = taken(height, believed);
      doubted = null;
    }
  }
  return slips;
}

/**
 * Whether somebody has tapped what explains it.
 * @param {[number, string][]} odd
 * @param {number} from
 * @param {number} to
 * @param {boolean} fell
 */
function tapped(odd, from, to, fell) {
  return odd.some(([at, word]) => {
    if (at < from || at > to + TAPPED_AFTER_MS) return false;
    if (word === "leak" || word === "spill") return fell;
    return word === "bumped" || (word === "foam" && !fell);
  });
}
