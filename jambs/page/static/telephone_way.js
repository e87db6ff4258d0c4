// The way to another page is taken only where there is an answer: without a network the browser would put its own page
// in the place of this one, and nothing could be entered any more.

const PATIENCE = 5000; // so long an answer is waited for [ms]

/** Looks before it goes. `tell(said)` is called with why it stays. */
export function carefulWay(links, tell) {
  for (const link of links)
    link.addEventListener("click", async (event) => {
      event.preventDefault();
      try {
        await fetch("/static/mark.svg", { method: "HEAD", cache: "no-store", signal: AbortSignal.timeout(PATIENCE) });
        location.assign(link.href);
      } catch {
        tell("No network, so this page stays: go on here, and try again when it is back.");
      }
    });
}
