// @ts-check
// A school's roster: looked at first; of it only the chosen classes are sent to be kept.

/** The most that is sent (bytes). */
const MOST = 8 * 1024 * 1024;

const root = /** @type {HTMLElement | null} */ (document.querySelector("[data-roster]"));
const home = root?.dataset.roster ?? "";
const pick = /** @type {HTMLInputElement} */ (document.getElementById("pick"));
const said = /** @type {HTMLElement} */ (document.getElementById("roster-said"));

/** @param {string} address @param {Blob} body */
async function ask(address, body) {
  try {
    const answer = await fetch(address, {
      method: "POST",
      headers: { "content-type": "application/octet-stream", "x-barm": "1" },
      body,
    });
    if (answer.redirected) return location.assign(answer.url);
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const told = page.querySelector("main") ?? page.body;
    said.replaceChildren(...told.childNodes);
  } catch {
    said.textContent = said.dataset.silent ?? "";
  }
}

document.getElementById("roster-look")?.addEventListener("click", async () => {
  const file = pick.files?.[0];
  if (!file || file.size === 0 || file.size > MOST) {
    said.textContent = said.dataset.nothing ?? "";
    return;
  }
  await ask(`${home}/look`, file);
  const take = document.getElementById("roster-take");
  take?.addEventListener("click", async () => {
    const on = /** @type {HTMLElement | null} */ (said.querySelector("[data-on]"))?.dataset.on ?? "";
    const chosen = /** @type {NodeListOf<HTMLSelectElement>} */ (said.querySelectorAll("[data-of]"));
    const of = [...chosen].map((one) => one.value).join(".");
    take.setAttribute("disabled", "");
    await ask(`${home}/take?on=${on}&of=${of}`, file);
    if (said.querySelector("[data-taken]")) location.assign(`${home}?did=taken`);
  });
});
