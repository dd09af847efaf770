// @ts-check
// Keys of entries: UUIDs of version 7 (RFC 9562, section 5.7), made where the entry is typed.
// Pages over plain http have no crypto.randomUUID, so the bits are laid out here.

/**
 * @param {number} now milliseconds since 1970, UTC
 * @param {Uint8Array} [chance] ten random bytes
 * @returns {string}
 */
export function newKey(now, chance = crypto.getRandomValues(new Uint8Array(10))) {
  const bytes = new Uint8Array(16);
  const time = Math.max(0, Math.floor(now));
  for (let at = 0; at < 6; at += 1) {
    bytes[at] = Math.floor(time / 2 ** (8 * (5 - at))) % 256;
  }
  bytes.set(chance, 6);
  bytes[6] = 0x70 | (bytes[6] & 0x0f);
  bytes[8] = 0x80 | (bytes[8] & 0x3f);
  const hex = Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
}

/**
 * A key of random bits only, which says nothing about when; for words that can be deleted.
 * @returns {string}
 */
export function newWordsKey() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
