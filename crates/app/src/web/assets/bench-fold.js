// @ts-check
// What stands for each bag: what the server says, and on top of it what it does not know yet.
/** @typedef {import("./bench-kinds.js").Scene} Scene */
/** @typedef {import("./bench-kinds.js").Kept} Kept */
/** @typedef {import("./bench-kinds.js").Bag} Bag */
/** @typedef {import("./bench-kinds.js").Height} Height */

/**
 * @param {Scene} scene
 * @param {Kept[]} kept in the order in which they were typed
 * @param {number} offset how far the program's clock is ahead, for entries that do not know
 * @returns {Scene}
 */
export function folded(scene, kept, offset) {
  const known = new Set(scene.keys);
  const whole = structuredClone(scene);
  for (const { entry, state, seat } of kept) {
    if (state === "refused" || seat !== scene.seat || known.has(entry.key)) continue;
    const at = entry.at + (entry.offset ?? offset);
    if (entry.what === "guess") {
      whole.guess = { at_ms: at, expects: entry.expects ?? [] };
      continue;
    }
    const bag = whole.bags.find((one) => one.code === entry.bag);
    if (bag) put(bag, entry, at, state);
  }
  return whole;
}

/**
 * @param {Bag} bag
 * @param {import("./bench-kinds.js").Entry} entry
 * @param {number} at
 * @param {"kept" | "saved"} state
 */
function put(bag, entry, at, state) {
  const mm = entry.mm ?? 0;
  const height = () => ({
    key: entry.key,
    at_ms: at,
    planned: entry.planned ?? null,
    mm,
    who: /** @type {"device"} */ ("device"),
    was: [],
    confirmed: false,
    rival: false,
    state,
  });
  switch (entry.what) {
    case "sealed":
      bag.sealed = true;
      break;
    case "zero": {
      const zeros = bag.zero ? [bag.zero, ...bag.other_zeros, height()] : [height()];
      zeros.sort((a, b) => a.at_ms - b.at_ms);
      markRivals(zeros);
      bag.zero = zeros[0];
      bag.other_zeros = zeros.slice(1);
      break;
    }
    case "reading": {
      bag.readings.push(height());
      bag.readings.sort((a, b) => a.at_ms - b.at_ms);
      const planned = entry.planned ?? null;
      if (planned !== null) markRivals(bag.readings.filter((one) => one.planned === planned));
      break;
    }
    case "correction": {
      const all = [bag.zero, ...bag.other_zeros, ...bag.readings];
      const found = all.find((one) => one !== null && one.key === entry.of);
      if (!found) break;
      found.was = [...found.was, found.mm];
      found.confirmed = Math.abs(found.mm - mm) < 1e-9;
      found.mm = mm;
      found.state = state;
      const same = all.filter((one) => one !== null && one.planned === found.planned);
      if (found.planned !== null || found === bag.zero) {
        markRivals(/** @type {Height[]} */ (found === bag.zero ? [bag.zero, ...bag.other_zeros] : same));
      }
      break;
    }
    case "odd":
      bag.odd.push([at, entry.odd ?? "", entry.key]);
      break;
    case "odd-back":
      bag.odd = bag.odd.filter(([, , key]) => key !== entry.of);
      break;
    case "made":
      bag.poured = entry.celsius ?? null;
      break;
    case "vented":
      bag.vented = true;
      break;
    default:
  }
}

/** @param {Height[]} heights of one planned minute */
function markRivals(heights) {
  const differ = heights.some((one) => Math.abs(one.mm - heights[0].mm) > 0);
  for (const height of heights) height.rival = differ;
}
