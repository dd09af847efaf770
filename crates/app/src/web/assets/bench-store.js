// @ts-check
// What this device keeps: entries in IndexedDB, each on disk before anybody says so.
/** @typedef {import("./bench-kinds.js").Kept} Kept */

const NAME = "barm-bench";

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

/** @returns {Promise<IDBDatabase>} */
function open() {
  const request = indexedDB.open(NAME, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore("entries", { keyPath: "key" });
    request.result.createObjectStore("notes");
  };
  return asked(request);
}

/** @type {Promise<IDBDatabase> | null} */
let opened = null;

async function place() {
  opened ??= open();
  const database = await opened;
  database.onversionchange = () => database.close();
  database.onclose = () => {
    opened = null;
  };
  return database;
}

/**
 * Writes, and comes back when the disk has it: durability "strict" waits for the flush.
 * @param {"entries" | "notes"} name
 * @param {(store: IDBObjectStore) => void} write
 * @returns {Promise<void>}
 */
async function written(name, write) {
  const database = await place();
  await new Promise((resolve, reject) => {
    const work = database.transaction(name, "readwrite", { durability: "strict" });
    work.oncomplete = () => resolve(undefined);
    work.onerror = () => reject(work.error);
    work.onabort = () => reject(work.error ?? new Error("not written"));
    write(work.objectStore(name));
  });
}

/** @param {Kept[]} all */
export function keep(all) {
  return written("entries", (store) => all.forEach((kept) => store.put(kept)));
}

/** @returns {Promise<Kept[]>} in the order in which they were typed: keys sort by time */
export async function everything() {
  const database = await place();
  return asked(database.transaction("entries").objectStore("entries").getAll());
}

/** @param {string[]} keys */
export function drop(keys) {
  return written("entries", (store) => keys.forEach((key) => store.delete(key)));
}

/**
 * A note of this page to itself, such as the last that the server said.
 * @param {string} name
 * @param {unknown} value
 */
export function note(name, value) {
  return written("notes", (store) => store.put(value, name));
}

/**
 * @param {string} name
 * @returns {Promise<any>}
 */
export async function noted(name) {
  const database = await place();
  return asked(database.transaction("notes").objectStore("notes").get(name));
}

/**
 * Forgets what a group that leaves would show to the next; what is not sent stays.
 * @param {string[]} sent keys of entries
 */
export async function forgetGroup(sent) {
  await drop(sent);
  await written("notes", (store) => ["scene", "contact", "language"].forEach((name) => store.delete(name)));
}

/** Forgets everything on this device. */
export async function forget() {
  await written("entries", (store) => store.clear());
  await written("notes", (store) => store.clear());
}
