// @ts-check
// Moving in the grid without a mouse: Enter to the next cell, arrows, Escape.

/**
 * @param {HTMLElement} grid
 * @param {() => HTMLElement | null} after what comes after the last cell
 */
export function moves(grid, after) {
  /** @returns {HTMLInputElement[][]} */
  const rows = () => [...grid.querySelectorAll("tbody tr")].map((row) => [...row.querySelectorAll("input")]);
  const cells = () => /** @type {HTMLInputElement[]} */ ([...grid.querySelectorAll("input[data-bag]")]);

  /** @param {HTMLElement | null | undefined} to */
  const go = (to) => {
    to?.focus();
    if (to instanceof HTMLInputElement) to.select();
  };

  /** @param {HTMLInputElement} from @param {number} by */
  const step = (from, by) => {
    const all = cells();
    const at = all.indexOf(from);
    if (at < 0) {
      // The time of a zero reading: on to the cells of its own row.
      go(from.closest("tr")?.querySelector("input[data-bag]"));
      return;
    }
    const to = all[at + by];
    go(to ?? (by > 0 ? after() : from));
  };

  /** @param {HTMLInputElement} from @param {number} by */
  const down = (from, by) => {
    const all = rows();
    const at = all.findIndex((row) => row.includes(from));
    const minute = from.dataset.minute;
    const next = all[at + by];
    go(next?.find((one) => one.dataset.minute === minute));
  };

  /** Whether the caret stands at that end, or all is selected. @param {HTMLInputElement} one @param {boolean} end */
  const edge = (one, end) => {
    const whole = one.selectionStart === 0 && one.selectionEnd === one.value.length;
    return whole || (one.selectionStart === one.selectionEnd && one.selectionStart === (end ? one.value.length : 0));
  };

  grid.addEventListener("focusin", (event) => {
    const one = event.target;
    if (!(one instanceof HTMLInputElement)) return;
    one.dataset.before = one.value;
    one.select();
  });

  grid.addEventListener("keydown", (event) => {
    const one = event.target;
    if (!(one instanceof HTMLInputElement) || event.isComposing) return;
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const own = [...(one.closest("tr")?.querySelectorAll("input") ?? [])];
    const beside = own[own.indexOf(one) + (event.key === "ArrowLeft" ? -1 : 1)];
    if (event.key === "Enter") step(one, event.shiftKey ? -1 : 1);
    else if (event.key === "ArrowDown") down(one, 1);
    else if (event.key === "ArrowUp") down(one, -1);
    else if (event.key === "ArrowRight" && edge(one, true) && beside) go(beside);
    else if (event.key === "ArrowLeft" && edge(one, false) && beside) go(beside);
    else if (event.key === "Escape") {
      one.value = one.dataset.before ?? "";
      one.dispatchEvent(new Event("input", { bubbles: true }));
      one.select();
    } else return;
    event.preventDefault();
  });
}
