// @ts-check
// Marking by keyboard: a digit gives the strand that is at hand its level and goes on to the next. Letters work only
// while they are switched on, and never in a field.

const strands = /** @type {HTMLElement[]} */ ([...document.querySelectorAll("[data-strand]")]);
const on = /** @type {HTMLInputElement | null} */ (document.getElementById("keys-on"));
let at = 0;

/** @param {number} to */
function go(to) {
  if (strands.length === 0) return;
  at = Math.max(0, Math.min(strands.length - 1, to));
  strands[at].focus({ preventScroll: true });
  strands[at].scrollIntoView({ block: "nearest" });
}

addEventListener("keydown", (event) => {
  const target = /** @type {HTMLElement} */ (event.target);
  if (event.key === "Escape" && target instanceof HTMLTextAreaElement) return go(at);
  if (!on?.checked || event.ctrlKey || event.metaKey || event.altKey) return;
  if (target.closest("textarea, select, input:not([type=radio]):not([type=checkbox])")) return;
  const here = target.closest("[data-strand]");
  if (here) at = strands.indexOf(/** @type {HTMLElement} */ (here));
  const own = strands[at];
  if (/^[0-4]$/.test(event.key)) {
    const level = /** @type {HTMLInputElement | null} */ (own?.querySelector(`input[value="${event.key}"]`));
    if (!level) return;
    level.checked = true;
    go(at + 1);
  } else if (event.key === "j") go(at + 1);
  else if (event.key === "k") go(at - 1);
  else if (event.key === "r") own?.querySelector("textarea")?.focus();
  else if (event.key === "n" || event.key === "b") {
    const button = /** @type {HTMLElement | null} */ (document.querySelector(`[data-key="${event.key}"]`));
    if (!button) return;
    button.click();
  } else return;
  event.preventDefault();
});

// A remark that was written before is taken as it is, to be changed.
for (const again of /** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll("[data-again]"))) {
  again.addEventListener("click", () => {
    const field = /** @type {HTMLTextAreaElement | null} */ (document.getElementById(again.dataset.again ?? ""));
    if (!field) return;
    field.value = field.value ? `${field.value} ${again.textContent}` : (again.textContent ?? "");
    field.focus();
  });
}

go(0);
