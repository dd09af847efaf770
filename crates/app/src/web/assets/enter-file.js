// @ts-check
// A file of readings: looked at first, added when the teacher says so.
import { newKey } from "./bench-key.js";

/** The most that is sent (bytes). */
const MOST = 1024 * 1024;

/** @param {string} address */
export function files(address) {
  const pick = /** @type {HTMLInputElement} */ (document.getElementById("pick"));
  const pasted = /** @type {HTMLTextAreaElement} */ (document.getElementById("pasted"));
  const said = /** @type {HTMLElement} */ (document.getElementById("file-said"));
  let key = "";
  /** @type {Blob | null} */
  let body = null;

  /** @param {string} what @param {string} asks */
  const ask = async (what, asks) => {
    try {
      const answer = await fetch(`${address}/${what}?key=${key}${asks}`, {
        method: "POST",
        headers: { "content-type": "application/octet-stream", "x-barm": "1" },
        body,
      });
      if (answer.redirected) {
        location.assign(answer.url);
        return;
      }
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      const told = page.querySelector("main") ?? page.body;
      said.replaceChildren(...told.childNodes);
    } catch {
      said.textContent = said.dataset.silent ?? "";
      return;
    }
    const add = document.getElementById("file-add");
    add?.addEventListener("click", async () => {
      const ticked = said.querySelectorAll("input[data-take]:checked");
      const take = [...ticked].map((one) => /** @type {HTMLElement} */ (one).dataset.take);
      add.setAttribute("disabled", "");
      await ask("add", `&take=${take.join(".")}`);
      if (said.querySelector("[data-added]")) {
        const count = said.querySelector("[data-added]");
        sessionStorage.setItem("barm-file-added", count?.textContent ?? "");
        location.reload();
      }
    });
  };

  document.getElementById("file-look")?.addEventListener("click", async () => {
    const file = pick.files?.[0];
    body = file && !pasted.value.trim() ? file : new Blob([pasted.value]);
    if (body.size === 0 || body.size > MOST || (!file && !pasted.value.trim())) {
      said.textContent = said.dataset.nothing ?? "";
      return;
    }
    // One key for what was looked at: adding it twice counts once.
    key = newKey(Date.now());
    await ask("look", "");
  });
  pick.addEventListener("change", () => { pasted.value = ""; });

  const before = sessionStorage.getItem("barm-file-added");
  if (before) {
    sessionStorage.removeItem("barm-file-added");
    said.textContent = before;
  }
}
