// @ts-check
// Reads a chosen file into the field that is sent, and fills in the time zone of this computer.

const MOST = 1024 * 1024;
const opener = document.querySelector("[data-opener]");
const pick = /** @type {HTMLInputElement | null} */ (document.getElementById("pick"));
const text = /** @type {HTMLTextAreaElement | null} */ (document.getElementById("brought"));
const wrong = document.getElementById("wrong");

if (opener && pick && text && wrong) {
  const says = /** @type {HTMLElement} */ (opener).dataset;
  const place = /** @type {HTMLElement} */ (opener.querySelector("[data-pick]"));
  place.hidden = false;
  pick.addEventListener("change", async () => {
    const file = pick.files?.[0];
    if (!file) return;
    wrong.textContent = "";
    if (file.size > MOST) {
      wrong.textContent = says.large ?? "";
      return;
    }
    const bytes = await file.arrayBuffer();
    try {
      text.value = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
    } catch {
      wrong.textContent = says.noText ?? "";
      return;
    }
    wrong.textContent = (says.read ?? "").replace("{file}", () => file.name);
  });
}

const zone = /** @type {HTMLInputElement | null} */ (document.getElementById("zone"));
if (zone && zone.value === zone.defaultValue) {
  const own = Intl.DateTimeFormat().resolvedOptions().timeZone;
  if (own && own !== "UTC") zone.value = own;
}

// Lines of the shelf that are being counted: looked for again until they are there.
if (document.querySelector("[data-counting]")) {
  setTimeout(() => location.reload(), 2000);
}
