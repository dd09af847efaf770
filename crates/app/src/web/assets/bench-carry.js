// @ts-check
// Taking unsent entries along to another address. A browser keeps what a page stores under the
// address it came from, so they travel in the part of the link that is never sent to a server.
/** @typedef {import("./bench-kinds.js").Kept} Kept */

const MARK = "#brings=";

/**
 * The address that somebody wrote, or none if it is not one.
 * @param {string} written
 * @returns {string | null}
 */
export function addressOf(written) {
  const text = written.trim();
  if (text === "" || /\s/.test(text)) return null;
  const full = /^https?:\/\//i.test(text) ? text : `http://${text}`;
  let url;
  try {
    url = new URL(full);
  } catch {
    return null;
  }
  const right = (url.protocol === "http:" || url.protocol === "https:") && url.username === "" && url.password === "";
  return right && url.hostname !== "" ? url.origin : null;
}

/**
 * @param {string} origin
 * @param {Kept[]} kept what has not been acknowledged
 */
export function linkTo(origin, kept) {
  const brings = kept.map(({ entry, seat }) => ({ entry, seat }));
  const bytes = new TextEncoder().encode(JSON.stringify(brings));
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return `${origin}/bench${kept.length > 0 ? MARK + text : ""}`;
}

/**
 * What a link brings; what is not an entry is left out.
 * @param {string} hash
 * @returns {Kept[]}
 */
export function brought(hash) {
  if (!hash.startsWith(MARK)) return [];
  try {
    const bytes = Uint8Array.from(atob(hash.slice(MARK.length)), (char) => char.charCodeAt(0));
    const all = JSON.parse(new TextDecoder().decode(bytes));
    if (!Array.isArray(all)) return [];
    return all.slice(0, 1000).filter(isEntry).map(({ entry, seat }) => ({ key: entry.key, entry, seat, state: "kept" }));
  } catch {
    return [];
  }
}

const KEY = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;
const WHATS = ["sealed", "zero", "reading", "correction", "odd", "vented", "guess"];

/** @param {any} one */
function isEntry(one) {
  const entry = one?.entry;
  return (
    typeof one?.seat === "string" &&
    typeof entry?.key === "string" &&
    KEY.test(entry.key) &&
    WHATS.includes(entry.what) &&
    Number.isFinite(entry.at) &&
    [entry.mm, entry.offset, entry.planned].every((one) => one === undefined || one === null || Number.isFinite(one)) &&
    (entry.bag === null || typeof entry.bag === "string")
  );
}
