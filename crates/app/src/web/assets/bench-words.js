// @ts-check
// What the page says. It comes with the words of one language; those of another are fetched when
// somebody asks for it, and the browser keeps them, so that they are there without the server too.

/** @type {Record<string, Record<string, string>>} */
let words = {};
/** @type {[string, string, string][]} code, own name, and where the words lie */
let all = [];
let language = "en";

/**
 * @param {Record<string, Record<string, string>>} given by language and key
 * @param {[string, string, string][]} languages
 */
export function learnWords(given, languages) {
  words = given;
  all = languages;
}

/** @returns {[string, string][]} code and own name */
export function languages() {
  return all.map(([code, name]) => [code, name]);
}

/**
 * Brings the words of a language, and says whether they are here.
 * @param {string} code
 */
export async function bring(code) {
  if (code in words) return true;
  const place = all.find(([one]) => one === code)?.[2];
  if (!place) return false;
  try {
    const answer = await fetch(place);
    if (!answer.ok) return false;
    words[code] = await answer.json();
    return true;
  } catch {
    return false;
  }
}

/** @param {string} code */
export function speak(code) {
  if (code in words) language = code;
  document.documentElement.lang = language;
}

export function spoken() {
  return language;
}

/**
 * The text of a key, with values in its open places.
 * @param {string} key
 * @param {Record<string, string | number>} [values]
 */
export function t(key, values = {}) {
  const text = words[language]?.[key] ?? key;
  return text.replace(/\{([a-z]+)\}/g, (whole, name) => String(values[name] ?? whole));
}

/** @param {number} mm whole, or to a tenth */
export function mmText(mm) {
  return String(Math.round(mm * 10) / 10);
}

/** @param {number} seconds */
export function clockText(seconds) {
  const whole = Math.max(0, Math.ceil(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}

/** @param {number} ms on this device's clock */
export function timeText(ms) {
  const at = new Date(ms);
  return `${at.getHours()}:${String(at.getMinutes()).padStart(2, "0")}`;
}
