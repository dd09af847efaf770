// @ts-check
// The queue by keyboard: single letters work only while they are switched on, and never in a field.

const proposals = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-proposal]")]);
const on = /** @type {HTMLInputElement | null} */ (document.getElementById("keys-on"));
let at = 0;

/** @param {number} to */
function go(to) {
  if (proposals.length === 0) return;
  at = Math.max(0, Math.min(proposals.length - 1, to));
  proposals[at].focus({ preventScroll: true });
  proposals[at].scrollIntoView({ block: "start" });
}

addEventListener("keydown", (event) => {
  if (!on?.checked || event.ctrlKey || event.metaKey || event.altKey) return;
  const target = /** @type {HTMLElement} */ (event.target);
  if (target.closest("input:not([type=checkbox]), textarea, select")) return;
  const here = target.closest("[data-proposal]");
  if (here) at = proposals.indexOf(/** @type {HTMLElement} */ (here));
  if (event.key === "j") go(at + 1);
  else if (event.key === "k") go(at - 1);
  else if (["a", "c", "r"].includes(event.key)) {
    const own = proposals[at];
    const control = /** @type {HTMLElement | null} */ (own?.querySelector(`[data-key="${event.key}"]`));
    if (!control || control.hasAttribute("disabled")) return;
    control.click();
    const details = control.closest("details");
    const field = /** @type {HTMLInputElement | null} */ (details?.querySelector("input:not([type=hidden])"));
    if (details?.open && field) {
      field.focus();
      field.select();
    }
  } else return;
  event.preventDefault();
});

// Enter in an opened part does what that part is for, not the first button of the form.
for (const part of document.querySelectorAll("details.act")) {
  part.addEventListener("keydown", (event) => {
    const pressed = /** @type {KeyboardEvent} */ (event);
    if (pressed.key !== "Enter" || !(pressed.target instanceof HTMLInputElement)) return;
    pressed.preventDefault();
    /** @type {HTMLButtonElement | null} */ (part.querySelector("button"))?.click();
  });
}

go(0);
