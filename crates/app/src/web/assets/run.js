// @ts-check
// The run page by keyboard. Keys only move the focus; Enter does. They can be switched off.
import "./live.js";

/** @param {string} id */
const at = (id) => document.getElementById(id);

const toggle = at("keys");
let on = localStorage.getItem("barm-keys") !== "off";

function shown() {
  if (!toggle) return;
  toggle.hidden = false;
  toggle.setAttribute("aria-pressed", String(on));
  toggle.textContent = (on ? toggle.dataset.on : toggle.dataset.off) ?? "";
}
toggle?.addEventListener("click", () => {
  on = !on;
  localStorage.setItem("barm-keys", on ? "on" : "off");
  shown();
});
shown();

/** The first thing to press in a list, or its head. @param {string} part */
function into(part) {
  const list = at(part);
  const first = list?.querySelector("button, a[href]") ?? at(`${part}-head`);
  if (first instanceof HTMLElement) first.focus();
}

addEventListener("keydown", (event) => {
  if (!on || event.ctrlKey || event.metaKey || event.altKey) return;
  const target = event.target;
  if (target instanceof Element && target.closest("input, select, textarea")) {
    if (event.key === "Escape" && target instanceof HTMLElement) target.blur();
    return;
  }
  const moves = {
    w: () => at("w-bag")?.focus(),
    n: () => into("needs"),
    r: () => into("now"),
    x: () => into("next"),
    s: () => (at("go-on") ?? at("begin") ?? at("stop"))?.focus(),
  };
  const move = moves[/** @type {keyof typeof moves} */ (event.key.toLowerCase())];
  if (move) {
    event.preventDefault();
    move();
  }
});

// A tap on a height picks its bag to write for.
addEventListener("click", (event) => {
  const pick = event.target instanceof Element ? event.target.closest("[data-pick]") : null;
  const bag = at("w-bag");
  if (!(pick instanceof HTMLElement) || !(bag instanceof HTMLInputElement)) return;
  event.preventDefault();
  bag.value = pick.dataset.pick ?? "";
  at("w-mm")?.focus();
});

// A bag typed and Enter pressed goes on to its height.
at("w-bag")?.addEventListener("keydown", (event) => {
  const mm = at("w-mm");
  if (event.key === "Enter" && mm instanceof HTMLInputElement && mm.value === "") {
    event.preventDefault();
    mm.focus();
  }
});

// Links to a folded part open it.
function unfold() {
  const part = location.hash ? document.querySelector(location.hash) : null;
  if (part instanceof HTMLDetailsElement) part.open = true;
}
addEventListener("hashchange", unfold);
unfold();
addEventListener("click", (event) => {
  const link = event.target instanceof Element ? event.target.closest("a[href^='#']") : null;
  const part = link ? document.querySelector(link.getAttribute("href") ?? "") : null;
  if (part instanceof HTMLDetailsElement) part.open = true;
});

// Ticks of the changeover stay on this computer.
for (const list of document.querySelectorAll("[data-ticks]")) keep(/** @type {HTMLElement} */ (list));
new MutationObserver(() => {
  for (const list of document.querySelectorAll("[data-ticks]:not([data-kept])")) keep(/** @type {HTMLElement} */ (list));
}).observe(document.body, { childList: true, subtree: true });

/** @param {HTMLElement} list */
function keep(list) {
  list.dataset.kept = "1";
  const name = `barm-ticks-${list.dataset.ticks}`;
  const ticked = new Set(JSON.parse(localStorage.getItem(name) ?? "[]"));
  for (const box of list.querySelectorAll("input[type=checkbox]")) {
    if (box instanceof HTMLInputElement) box.checked = ticked.has(box.id);
  }
  list.addEventListener("change", () => {
    const boxes = [...list.querySelectorAll("input[type=checkbox]:checked")];
    localStorage.setItem(name, JSON.stringify(boxes.map((box) => box.id)));
  });
}
