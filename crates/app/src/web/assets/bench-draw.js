// @ts-check
// Small tools to draw with: elements, signs, and parts that are only drawn again when they differ.

const SVG = "http://www.w3.org/2000/svg";

/**
 * @param {string} tag
 * @param {Record<string, any>} with_ attributes; a function is a listener, true an empty attribute
 * @param {(Node | string | null | false)[]} inside
 * @returns {HTMLElement}
 */
export function el(tag, with_ = {}, ...inside) {
  const made = document.createElement(tag);
  for (const [name, value] of Object.entries(with_)) {
    if (value === null || value === false || value === undefined) continue;
    if (typeof value === "function") made.addEventListener(name, value);
    else made.setAttribute(name, value === true ? "" : String(value));
  }
  made.append(...kept(inside));
  return made;
}

/**
 * @param {string} tag
 * @param {Record<string, any>} with_
 * @param {(Node | string | null | false)[]} inside
 * @returns {SVGElement}
 */
export function svg(tag, with_ = {}, ...inside) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(with_)) {
    if (value !== null && value !== false) made.setAttribute(name, String(value));
  }
  made.append(...kept(inside));
  return made;
}

/** @param {(Node | string | null | false)[]} inside */
function kept(inside) {
  return /** @type {(Node | string)[]} */ (inside.filter((one) => one !== null && one !== false));
}

const STATES = {
  due: "M4 2.5l8.5 5.5-8.5 5.5z",
  late: "M3 2v12M8 2v12M13 2v12",
  saved: "M2.5 8.5l3.8 4 7.2-9",
  kept: "M2.5 8v5.5h11v-5.5M8 2v7M5.2 6.2l2.8 2.8 2.8-2.8",
  lock: "M2.5 6.5h11v7h-11zM2.5 6.5l2-3.5h7l2 3.5M8 8.8v2.4",
  refused: "M3 3l10 10M13 3l-10 10",
};

/**
 * The sign of a state, which always stands beside its word.
 * @param {keyof typeof STATES} name
 */
export function sign(name) {
  const width = { late: 2.6, saved: 2 }[/** @type {string} */ (name)] ?? 1.6;
  return svg(
    "svg",
    { class: "ic", viewBox: "0 0 16 16", width: 16, height: 16, "aria-hidden": "true", fill: "none", stroke: "currentColor", "stroke-width": width, "stroke-linejoin": "round" },
    svg("path", { d: STATES[name], fill: name === "due" ? "currentColor" : null }),
  );
}

/** Line, width where it is not 1.75, and whether it is filled. */
/** @type {Record<string, [string, number?, boolean?][]>} */
const ICONS = {
  leak: [["M3 2.8h18v3h-18z"], ["M4 5.8c.2 5-.2 10-1.5 15.2 5.5-1.7 13.5-1.7 19 0-1.3-5.2-1.7-10.2-1.5-15.2"], ["M3.7 14.8c2.8-1.3 5.5 1 8.3 0s5.5-1.3 8.3 0", 1.3]],
  spill: [["M14.2 9.8l4-4M16.3 3.7a2.3 2.3 0 0 1 3.3 0l.7.7a2.3 2.3 0 0 1 0 3.3l-2.3 2.3-4-4z"], ["M12.6 6.8l4.6 4.6M14 8.3l-7.6 7.6-.9 2.7 2.7-.9 7.6-7.6"], ["M4.3 18.3c-.9 1.1-1.3 1.7-1.3 2.2 0 1.5 2.6 1.5 2.6 0 0-.5-.4-1.1-1.3-2.2z", 1, true]],
  foam: [["M2.5 9.5h19v2.3h-19z"], ["M4.5 21c-1.7-2.5-1.7-6.6 0-9.2M19.5 21c1.7-2.5 1.7-6.6 0-9.2"], ["M2.5 21h19"], ["M12 6.5v-4M10 4.3l2-1.9 2 1.9"]],
  late: [["M3 12a9 9 0 1 0 18 0a9 9 0 1 0-18 0"], ["M12 6.5v5.5l4 2.7"], ["M12 3v1.4M21 12h-1.4M12 21v-1.4M3 12h1.4", 1.3]],
  bumped: [["M7.5 13.5v-7a1.5 1.5 0 0 1 3 0v-1.7a1.5 1.5 0 0 1 3 0v1.7a1.5 1.5 0 0 1 3 0v2a1.4 1.4 0 0 1 2.8 0v6c0 4-2.4 6.5-6 6.5-2.8 0-4.3-1-5.7-3.2l-3-4.6c-.8-1.3.9-2.5 2-1.4z"], ["M10.5 6.5v4.5M13.5 6.5v4.5M16.5 8.5v3", 1.2], ["M2.8 2.8l18.4 18.4", 2.4]],
  vent: [["M3 9.5h7v2.5h-7z"], ["M4 12c.2 3-.2 6-1.5 9 5.5-1.3 13.5-1.3 19 0-1.3-3-1.5-6-1.3-9l2-2.3"], ["M13.5 10.5c-1.2-1.5 1.2-2.8 0-4.3s1.2-2.2.5-3.7M17.5 9.5c-1.2-1.5 1.2-2.8 0-4.3s1-1.8.5-3", 1.5]],
  goggles: [["M3.5 9.5c0-1.4 1-2.4 2.4-2.4h12.2c1.4 0 2.4 1 2.4 2.4v4.3c0 2-1.5 3.7-3.5 3.7h-1.6c-1.3 0-2-.8-2.4-1.8-.3-.8-.5-1-1-1s-.7.2-1 1c-.4 1-1.1 1.8-2.4 1.8h-1.6c-2 0-3.5-1.7-3.5-3.7z"], ["M3.5 10.5l-2-1.2M20.5 10.5l2-1.2M7 10.3l-1 2.8M15.5 10.3l-1 2.8"]],
};

/**
 * A line drawing, which always stands beside its word.
 * @param {string} name
 */
export function icon(name) {
  if (!(name in ICONS)) return null;
  const lines = ICONS[name].map(([d, width, fill]) =>
    svg("path", { d, "stroke-width": width ?? null, fill: fill ? "currentColor" : null }),
  );
  return svg(
    "svg",
    { class: "ic", viewBox: "0 0 24 24", width: 22, height: 22, "aria-hidden": "true", fill: "none", stroke: "currentColor", "stroke-width": 1.75, "stroke-linejoin": "round", "stroke-linecap": "round" },
    ...lines,
  );
}

/** @type {Map<string, string>} */
const drawn = new Map();

/**
 * Draws a part of the page if it differs from what stands there. What had the focus has it after.
 * @param {string} id of the element that holds the part
 * @param {unknown} like what the part is made from
 * @param {() => (Node | string | null | false)[]} make
 */
export function part(id, like, make) {
  const signature = JSON.stringify(like);
  if (drawn.get(id) === signature) return;
  const place = document.getElementById(id);
  if (!place) return;
  drawn.set(id, signature);
  const focused = place.contains(document.activeElement)
    ? document.activeElement?.getAttribute("data-k")
    : null;
  const open = new Set(Array.from(place.querySelectorAll("details[open]"), (one) => one.id));
  const typed = new Map(
    Array.from(place.querySelectorAll("input, textarea"), (one) => [one.id, /** @type {HTMLInputElement} */ (one).value]),
  );
  place.replaceChildren(...kept(make()));
  for (const one of place.querySelectorAll("details")) if (open.has(one.id)) one.open = true;
  for (const one of place.querySelectorAll("input, textarea")) {
    const input = /** @type {HTMLInputElement} */ (one);
    if (input.id && input.value === "" && typed.get(input.id)) input.value = typed.get(input.id) ?? "";
  }
  if (focused) {
    const again = place.querySelector(`[data-k="${CSS.escape(focused)}"]`);
    if (again instanceof HTMLElement) again.focus({ preventScroll: true });
  }
}
