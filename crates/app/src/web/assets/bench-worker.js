// @ts-check
// Where connections are encrypted, this opens the bench page again without the server: the files of
// the page, and the page as the server gave it last. It touches nothing else. The program puts the
// names of the files and their version in front, so that another program brings another worker.
/** @type {string} */
var VERSION;
/** @type {string[]} */
var FILES;

const worker = /** @type {any} */ (self);
const SHELF = `bench ${VERSION}`;
const PAGE = "/bench";
const KEPT = "x-kept";
/** A page is opened again for so long after the server gave it (ms): a period, not a day. */
const GOOD_FOR = 2 * 3_600_000;
/** A server that has not answered by then is not there (ms). */
const PATIENCE = 5_000;

worker.addEventListener("install", (/** @type {any} */ event) => event.waitUntil(prepare()));
worker.addEventListener("activate", (/** @type {any} */ event) => event.waitUntil(takeOver()));
worker.addEventListener("fetch", (/** @type {any} */ event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== "GET" || origin !== location.origin) return;
  if (request.mode === "navigate" && pathname === PAGE) event.respondWith(page(request));
  else if (FILES.includes(pathname)) event.respondWith(file(request));
});

async function prepare() {
  const shelf = await caches.open(SHELF);
  await shelf.addAll(FILES);
  const answer = await fetch(PAGE, { headers: { accept: "text/html" } });
  if (answer.ok && !answer.redirected) await keep(answer);
  await worker.skipWaiting();
}

/** What an older program left is of no use to this one. */
async function takeOver() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith("bench ") && name !== SHELF);
  await Promise.all(old.map((name) => caches.delete(name)));
  await worker.clients.claim();
}

/** @param {Request} request */
async function file(request) {
  return (await caches.match(request, { cacheName: SHELF })) ?? fetch(request);
}

/** @param {Request} request */
async function page(request) {
  try {
    const late = new Promise((_, reject) => setTimeout(() => reject(new Error("late")), PATIENCE));
    const answer = /** @type {Response} */ (await Promise.race([fetch(request), late]));
    if (answer.ok && answer.type === "basic") await keep(answer.clone());
    // Whoever is sent to the door is in no group: nothing of one stays.
    else if (answer.type === "opaqueredirect") await forget();
    return answer;
  } catch {
    return (await kept()) ?? Response.error();
  }
}

/** @param {Response} answer */
async function keep(answer) {
  const headers = new Headers(answer.headers);
  headers.delete("content-encoding");
  headers.delete("content-length");
  headers.set(KEPT, String(Date.now()));
  const shelf = await caches.open(SHELF);
  await shelf.put(PAGE, new Response(await answer.text(), { headers }));
}

/** The page of before, marked so that it does not take its old time for the time now. */
async function kept() {
  const answer = await caches.match(PAGE, { cacheName: SHELF });
  if (!answer) return null;
  const age = Date.now() - Number(answer.headers.get(KEPT));
  if (!(age >= 0 && age < GOOD_FOR)) {
    await forget();
    return null;
  }
  const text = await answer.text();
  return new Response(text.replace('id="given"', 'id="given" data-again'), { headers: answer.headers });
}

async function forget() {
  const shelf = await caches.open(SHELF);
  await shelf.delete(PAGE);
}
