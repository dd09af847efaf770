// @ts-check
// Puts in what a pilot taught as soon as it is worked out; what is being typed stays as it is.

const part = document.getElementById("learned");

async function look() {
  if (!part?.querySelector("[data-working]")) return;
  try {
    const answer = await fetch(location.pathname, { cache: "no-store" });
    const page = new DOMParser().parseFromString(await answer.text(), "text/html");
    const fresh = page.getElementById("learned");
    if (answer.ok && fresh && fresh.textContent !== part.textContent) {
      part.replaceChildren(...fresh.childNodes);
    }
  } catch { /* asked again */ }
  setTimeout(look, 1500);
}

setTimeout(look, 700);
