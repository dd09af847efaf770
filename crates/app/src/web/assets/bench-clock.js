// @ts-check
// Whose turn it is, by the device's clock set right by the program's. The same rule as the board
// of the teacher's page: a bag's own zero reading starts its clock, and nothing falls due while
// all clocks stand still.
/** @typedef {import("./bench-kinds.js").Bag} Bag */
/** @typedef {import("./bench-kinds.js").Clock} Clock */

/** A reading is late after so many seconds. */
export const LATE_S = 60;

/**
 * How far the program's clock is ahead of this device's: the best of the last few contacts. In a
 * rehearsal the program's clock runs faster.
 */
export class Skew {
  constructor() {
    /** @type {{at: number, now: number, trip: number}[]} */
    this.heard = [];
    this.speed = 1;
  }

  /**
   * @param {number} sent when it was asked, on the device's clock (ms)
   * @param {number} back when it was answered
   * @param {number} now what the program said
   * @param {number} [speed] how many times as fast as a true clock the program's runs
   */
  hear(sent, back, now, speed = 1) {
    const trip = back - sent;
    if (!(trip >= 0) || !Number.isFinite(now)) return;
    this.speed = speed;
    this.heard.push({ at: (sent + back) / 2, now, trip });
    if (this.heard.length > 8) this.heard.shift();
    // Somebody has set one of the clocks: what was heard before says nothing any more.
    const last = this.heard[this.heard.length - 1];
    this.heard = this.heard.filter(
      (one) =>
        Math.abs(this.shown(one, last.at) - last.now) <= (2000 + (one.trip + last.trip) / 2) * speed,
    );
  }

  /**
   * What the program's clock shows by one contact.
   * @param {{at: number, now: number}} one
   * @param {number} at when, on the device's clock
   */
  shown(one, at) {
    return one.now + (at - one.at) * this.speed;
  }

  /** The contact that says most, to be noted for when the page is opened again. */
  best() {
    if (this.heard.length === 0) return null;
    const best = this.heard.reduce((a, b) => (b.trip < a.trip ? b : a));
    return { ...best, speed: this.speed };
  }

  /** @param {{at: number, now: number, trip: number, speed: number}} contact of before */
  recall({ at, now, trip, speed }) {
    this.speed = speed;
    this.heard = [{ at, now, trip }];
  }

  /** @returns {number | null} ms, now */
  get offset() {
    const best = this.best();
    if (!best) return null;
    const at = Date.now();
    return Math.round(this.shown(best, at) - at);
  }
}

/**
 * Seconds between two times without those in which all clocks stood still.
 * @param {Clock} clock
 * @param {number} from
 * @param {number} to
 */
export function runningS(clock, from, to) {
  let stood = 0;
  for (const [start, end] of clock.stopped) {
    const a = Math.max(start, from);
    const b = Math.min(end ?? to, to);
    if (b > a) stood += b - a;
  }
  return (to - from - stood) / 1000;
}

/**
 * When a bag's own clock shows that many minutes (ms).
 * @param {Clock} clock
 * @param {number} zero
 * @param {number} planned
 * @param {number} now
 */
export function fallsAt(clock, zero, planned, now) {
  let falls = zero + planned * 60_000;
  for (const [from, to] of clock.stopped) {
    const end = to ?? now;
    const start = Math.max(from, zero);
    if (start <= falls && end > start) falls += end - start;
  }
  return falls;
}

/**
 * The planned minute to be read next, or none.
 * @param {Clock} clock
 * @param {Bag} bag
 * @param {number} now
 * @returns {number | null}
 */
export function nextMinute(clock, bag, now) {
  if (!bag.zero) return null;
  const zero = bag.zero.at_ms;
  const inS = (/** @type {number} */ planned) => planned * 60 - runningS(clock, zero, now);
  const done = bag.readings.map((reading) => reading.planned ?? 0);
  const read = Math.max(0, ...done);
  const left = clock.minutes.filter((planned) => {
    if (planned <= read) return false;
    if (clock.began_ms === null) return true;
    return fallsAt(clock, zero, planned, now) <= clock.began_ms + clock.clearing_s * 1000 + 1000;
  });
  const come = left.filter((planned) => inS(planned) <= 0).pop();
  const toCome = left.find((planned) => inS(planned) > 0) ?? null;
  if (come === undefined) return toCome;
  const givenUp = bag.odd.some(
    ([at, word]) =>
      word === "not-read" && at <= now && come * 60 - runningS(clock, zero, at) <= 0,
  );
  return givenUp ? toCome : come;
}

/**
 * What is the matter with a bag now.
 * @typedef {{is: "zero" | "due" | "late" | "waiting" | "stopped" | "done" | "vented" | "lost",
 *   planned: number | null, inS: number}} State
 */

/**
 * @param {Clock} clock
 * @param {Bag} bag
 * @param {number} now
 * @returns {State}
 */
export function stateOf(clock, bag, now) {
  const none = Infinity;
  if (bag.lost) return { is: "lost", planned: null, inS: none };
  if (bag.vented) return { is: "vented", planned: null, inS: none };
  if (!bag.zero) return { is: "zero", planned: null, inS: none };
  const planned = clock.ended_ms !== null ? null : nextMinute(clock, bag, now);
  if (planned === null) return { is: "done", planned, inS: none };
  const inS = planned * 60 - runningS(clock, bag.zero.at_ms, now);
  if (stands(clock, now)) return { is: "stopped", planned, inS };
  if (inS > 0) return { is: "waiting", planned, inS };
  return { is: -inS > LATE_S ? "late" : "due", planned, inS };
}

/**
 * Whether all clocks stand still.
 * @param {Clock} clock
 * @param {number} now
 */
export function stands(clock, now) {
  return clock.stopped.some(([from, to]) => from <= now && (to === null || now < to));
}
