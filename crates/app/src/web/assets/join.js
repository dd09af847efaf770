// @ts-check
// The page where a group joins. It works without this; with it, a device says that it brings
// readings that are not sent yet, and keeps what a link from an old address brings.
import { brought } from "./bench-carry.js";
import { everything, keep } from "./bench-store.js";

async function tell() {
  const asks = document.getElementById("carry");
  const come = brought(location.hash);
  if (asks && come.length > 0) {
    asks.hidden = false;
    for (const one of asks.querySelectorAll("[data-count]")) one.textContent = String(come.length);
    document.getElementById("carry-take")?.addEventListener("click", async () => {
      await keep(come);
      history.replaceState(null, "", location.pathname + location.search);
      asks.hidden = true;
      await count();
    });
    document.getElementById("carry-leave")?.addEventListener("click", () => {
      history.replaceState(null, "", location.pathname + location.search);
      asks.hidden = true;
    });
  }
  await count();
}

async function count() {
  const waiting = (await everything()).filter((one) => one.state === "kept");
  const line = document.getElementById("brings");
  if (!line || waiting.length === 0) return;
  for (const one of line.querySelectorAll("[data-count]")) one.textContent = String(waiting.length);
  line.hidden = false;
}

// The class code is that of the whole class: the next group on this device need not type it again.
const CLASS = "class-code";
/** It works around its hour, so it is not offered longer than that (ms). */
const AN_HOUR = 3_600_000;
const period = /** @type {HTMLInputElement | null} */ (document.getElementById("period"));
if (period) {
  const [code, at] = (sessionStorage.getItem(CLASS) ?? "").split(" ");
  if (document.getElementById("fault") || Date.now() - Number(at) > AN_HOUR) sessionStorage.removeItem(CLASS);
  else if (code && period.value === "") {
    period.value = code;
    document.getElementById("group")?.focus();
  }
  period.form?.addEventListener("submit", () => {
    const typed = period.value.replaceAll(" ", "");
    if (typed !== "") sessionStorage.setItem(CLASS, `${typed} ${Date.now()}`);
  });
}

document.getElementById("not-mine")?.addEventListener("click", () => {
  const field = document.getElementById("group");
  if (field instanceof HTMLInputElement) {
    field.value = "";
    field.focus();
  }
  const said = document.getElementById("label-said");
  if (said) said.hidden = true;
});

tell().catch(() => {
  // Without a place to keep things there is nothing to bring.
});
