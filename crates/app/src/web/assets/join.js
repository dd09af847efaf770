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
