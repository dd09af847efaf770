// @ts-check
// The second time, blind: what differs between the two stands side by side, and one is chosen.

/** @typedef {{cell: string, name: string, first: string, second: string}} Pair */

/**
 * What differs in meaning: 1.2 cm and 12 are the same.
 * @param {Record<string, {text: string, mm: number | null, name: string}>} first
 * @param {Record<string, {text: string, mm: number | null, name: string}>} second
 * @returns {Pair[]}
 */
export function differences(first, second) {
  const cells = [...new Set([...Object.keys(first), ...Object.keys(second)])];
  return cells.flatMap((cell) => {
    const [a, b] = [first[cell], second[cell]];
    const same = a && b && (a.mm === null || b.mm === null ? a.text === b.text : Math.abs(a.mm - b.mm) < 0.005);
    if (same) return [];
    return [{ cell, name: (a ?? b).name, first: a?.text ?? "", second: b?.text ?? "" }];
  });
}

/**
 * Shows the pairs; calls back with each choice, and once all are made.
 * @param {HTMLElement} section
 * @param {Pair[]} pairs
 * @param {(cell: string, text: string) => void} choose
 * @param {() => void} settled
 */
export function choices(section, pairs, choose, settled) {
  const list = /** @type {HTMLElement} */ (section.querySelector("ul"));
  const { first = "", second = "", blank = "" } = section.dataset;
  let open = pairs.length;
  list.replaceChildren(...pairs.map((pair) => {
    const line = document.createElement("li");
    const name = document.createElement("b");
    name.textContent = pair.name;
    line.append(name);
    for (const [says, text] of [[first, pair.first], [second, pair.second]]) {
      const button = document.createElement("button");
      button.type = "button";
      button.className = "btn";
      button.textContent = `${says} ${text || blank}`;
      button.addEventListener("click", () => {
        const next = line.nextElementSibling ?? line.previousElementSibling;
        choose(pair.cell, text);
        line.remove();
        open -= 1;
        if (open === 0) settled();
        else next?.querySelector("button")?.focus();
      });
      line.append(button);
    }
    return line;
  }));
  section.hidden = pairs.length === 0;
  list.querySelector("button")?.focus();
}
