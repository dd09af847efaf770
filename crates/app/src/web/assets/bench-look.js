// @ts-check
// Hue, mark and dash of a treatment always travel together; the same as on paper.
import { svg } from "./bench-draw.js";

const INK = "#17233B";
const PAPER = "#F9F5EB";
const HUES = [INK, "#9F4731", "#517EC9", "#13514D", "#9A8254", "#554491", "#6A8875", "#443808", "#7C647A"];

/** @param {number} look */
function place(look) {
  return look === 0 ? 0 : ((look - 1) % 8) + 1;
}

/** @param {number} look */
export function hue(look) {
  return HUES[place(look)];
}

/** @param {number} value */
export function n(value) {
  return String(Math.round(value * 100) / 100);
}

/**
 * @param {number} x
 * @param {number} y
 * @param {[number, number][]} points
 */
function shape(x, y, points) {
  return `M${points.map(([a, b]) => `${n(x + a)} ${n(y + b)}`).join("L")}Z`;
}

/**
 * @param {number} long
 * @param {number} half
 * @param {number} turn
 * @returns {[number, number][]}
 */
function cross(long, half, turn) {
  /** @type {[number, number][]} */
  const corners = [[-half, -long], [half, -long], [half, -half], [long, -half], [long, half], [half, half], [half, long], [-half, long], [-half, half], [-long, half], [-long, -half], [-half, -half]];
  return corners.map(([a, b]) => [a * Math.cos(turn) - b * Math.sin(turn), a * Math.sin(turn) + b * Math.cos(turn)]);
}

/**
 * The mark of a treatment; the second bag of one wears it hollow.
 * @param {number} look
 * @param {boolean} hollow
 * @param {number} x
 * @param {number} y
 * @param {number} r
 * @returns {SVGElement[]}
 */
export function mark(look, hollow, x, y, r) {
  const color = hue(look);
  const ringed = look > 8;
  const s = ringed ? r * 0.72 : r;
  const fill = hollow
    ? { fill: PAPER, stroke: color, "stroke-width": n(s * 0.36), class: "hol" }
    : { fill: color };
  const path = (/** @type {[number, number][]} */ points) => svg("path", { d: shape(x, y, points), ...fill });
  const made = () => {
    switch (place(look)) {
      case 0:
        return svg("circle", { cx: n(x), cy: n(y), r: n(s * 0.86), class: "hol", fill: PAPER, stroke: color, "stroke-width": n(s * 0.36) });
      case 1:
        return svg("circle", { cx: n(x), cy: n(y), r: n(s), ...fill });
      case 2:
        return path([[-s * 0.9, -s * 0.9], [s * 0.9, -s * 0.9], [s * 0.9, s * 0.9], [-s * 0.9, s * 0.9]]);
      case 3:
        return path([[0, -s * 1.15], [s * 1.12, s * 0.85], [-s * 1.12, s * 0.85]]);
      case 4:
        return path([[0, -s * 1.22], [s * 1.22, 0], [0, s * 1.22], [-s * 1.22, 0]]);
      case 5:
        return path([[-s * 1.12, -s * 0.85], [s * 1.12, -s * 0.85], [0, s * 1.15]]);
      case 6:
        return path(cross(s * 1.15, s * 0.42, 0));
      case 7:
        return path(cross(s * 1.28, s * 0.36, Math.PI / 4));
      default:
        return path([[-s, -s * 1.1], [s, -s * 1.1], [-s, s * 1.1], [s, s * 1.1]]);
    }
  };
  const ring = ringed ? [svg("circle", { cx: n(x), cy: n(y), r: n(r * 1.42), fill: "none", stroke: color, "stroke-width": n(r * 0.2) })] : [];
  return [made(), ...ring];
}

/**
 * The mark alone, beside words that say the same.
 * @param {number} look
 * @param {boolean} hollow
 */
export function markIcon(look, hollow) {
  const r = look > 8 ? 4.8 : 5.6;
  return svg("svg", { class: "mk", width: 16, height: 16, viewBox: "0 0 18 18", "aria-hidden": "true" }, ...mark(look, hollow, 9, 9, r));
}
