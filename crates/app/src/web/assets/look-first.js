// @ts-check
// A zip that somebody exported elsewhere: looked at first; then it is sent once more, with what was chosen, to be kept.

/** The most that is sent (bytes). */
const MOST = 8 * 1024 * 1024;

const root = /** @type {HTMLElement | null} */ (document.querySelector("[data-look-first]"));
const home = root?.dataset.lookFirst ?? "";
const pick = /** @type {HTMLInputElement} */ (document.getElementById("pick"));
const said = /** @type {HTMLElement} */ (document.getElementById("said"));

/** @param {string} address @param {Blob} body @param {Element} place */
async function ask(address, body, place) {
  try {
    const answer = await fetch(address, {
      method: "POST",
      headers: { "content-type": "application/octet-stream", "x-barm": "1" },
      body,
    });
    if (answer.redirected) return location.assign(answer.url);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const told = page.querySelector("main") ?? page.body;
    place.replaceChildren(...told.childNodes);
  } catch {
    place.textContent = said.dataset.silent ?? "";
  }
}

/** What was chosen, as a query; fields of one name are joined by dots. */
function chosen() {
  /** @type {Map<string, string[]>} */
  const parts = new Map();
  const fields = /** @type {NodeListOf<HTMLInputElement | HTMLSelectElement>} */ (
    said.querySelectorAll("[data-part]")
  );
  for (const field of fields) {
    const name = field.dataset.part ?? "";
    parts.set(name, [...(parts.get(name) ?? []), field.value]);
  }
  return [...parts].map(([name, values]) => `&${name}=${encodeURIComponent(values.join("."))}`).join("");
}

document.getElementById("look")?.addEventListener("click", async () => {
  const file = pick.files?.[0];
  if (!file || file.size === 0 || file.size > MOST) {
    said.textContent = said.dataset.nothing ?? "";
    return;
  }
  const named = `file=${encodeURIComponent(file.name)}`;
  await ask(`${home}/look?${named}`, file, said);
  const take = document.getElementById("take");
  take?.addEventListener("click", async () => {
    take.setAttribute("disabled", "");
    // Where there is a place for it, what was typed stays when it is refused.
    await ask(`${home}/take?${named}${chosen()}`, file, said.querySelector("[data-refused]") ?? said);
    const taken = /** @type {HTMLElement | null} */ (said.querySelector("[data-taken]"));
    if (taken) location.assign(taken.dataset.taken ?? home);
    take.removeAttribute("disabled");
  });
});
