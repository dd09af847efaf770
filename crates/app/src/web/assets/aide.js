// @ts-check
// Ticks of a station stay on this device: they help one memory and say nothing about a bag.

for (const list of document.querySelectorAll("[data-ticks]")) {
  if (!(list instanceof HTMLElement)) continue;
  const name = `barm-ticks-${list.dataset.ticks}`;
  const boxes = /** @type {HTMLInputElement[]} */ ([...list.querySelectorAll("input[type=checkbox]")]);
  const ticked = new Set(JSON.parse(localStorage.getItem(name) ?? "[]"));
  for (const box of boxes) box.checked = ticked.has(box.id);
  const line = document.querySelector("[data-done]");
  const count = () => {
    const done = boxes.filter((box) => box.checked);
    localStorage.setItem(name, JSON.stringify(done.map((box) => box.id)));
    if (line instanceof HTMLElement) {
      line.textContent = (line.dataset.done ?? "")
        .replace("{done}", String(done.length))
        .replace("{all}", String(boxes.length));
    }
  };
  list.addEventListener("change", count);
  count();
}
