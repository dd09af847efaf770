// @ts-check
// What was typed on this sheet and not saved yet, kept in this browser: it survives a reload.

const NAME = "barm-paper";

/**
 * @typedef {object} Draft
 * @property {Record<string, [string, string]>} cells by cell: what stands there, and its key
 * @property {Record<string, string>} zeros by bag: the time of its zero reading
 * @property {Record<string, string> | null} second by cell: what was typed the second time
 */

/**
 * @template T
 * @param {IDBRequest<T>} request
 * @returns {Promise<T>}
 */
function asked(request) {
  return new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
}

/** @type {Promise<IDBDatabase> | null} */
let opened = null;

function place() {
  opened ??= (() => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => request.result.createObjectStore("drafts");
    return asked(request);
  })();
  return opened;
}

/** Drafts are written one after the other, so that the newest is the last. */
let writing = Promise.resolve();

/** Drafts that are not written yet. @type {Map<string, Draft | null>} */
const waiting = new Map();

/** Where a draft lies that was not written before its page went away. @param {string} sheet */
const aside = (sheet) => `${NAME} ${sheet}`;

// A page that goes away does not wait for a database.
addEventListener("pagehide", () => {
  for (const [sheet, draft] of waiting) {
    try {
      localStorage.setItem(aside(sheet), JSON.stringify(draft));
    } catch {
      // There is no other place.
    }
  }
});

/** How many were to be written so far; one that a newer has overtaken while it waited is left out. */
let newest = 0;

/**
 * @param {string} sheet
 * @param {Draft | null} draft nothing forgets it
 * @returns {Promise<void>}
 */
export function keep(sheet, draft) {
  const copy = draft && structuredClone(draft);
  const number = (newest += 1);
  waiting.set(sheet, copy);
  writing = writing.then(async () => {
    if (number !== newest) return;
    const database = await place();
    const work = database.transaction("drafts", "readwrite", { durability: "strict" });
    const drafts = work.objectStore("drafts");
    if (copy) drafts.put(copy, sheet);
    else drafts.delete(sheet);
    await new Promise((resolve, reject) => {
      work.oncomplete = () => resolve(undefined);
      work.onabort = () => reject(work.error);
    });
    if (number === newest) waiting.delete(sheet);
  }).catch(() => undefined);
  return writing;
}

/**
 * @param {string} sheet
 * @returns {Promise<Draft | null>}
 */
export async function kept(sheet) {
  try {
    const left = localStorage.getItem(aside(sheet));
    if (left !== null) {
      const draft = JSON.parse(left);
      await keep(sheet, draft);
      if (!waiting.has(sheet)) localStorage.removeItem(aside(sheet));
      return draft;
    }
    const database = await place();
    return (await asked(database.transaction("drafts").objectStore("drafts").get(sheet))) ?? null;
  } catch {
    return null;
  }
}
