// Going from view to view within one document: the draft and what is said of it stay, and the browser's own back and forth
// leave nothing, so that nothing is asked. A browser that cannot do that loads each view anew.

import { byId, draftChanged, GONE, leaveView, say } from "/static/page.js";

const VIEW = /^\/(job|papers|telephones|openings\/[^/]+)?$/;
let count = 0;

/** Put a view into the place of the one that is there; its modules run anew. */
async function bring(answer) {
  const next = new DOMParser().parseFromString(await answer.text(), "text/html"), view = next.getElementById("view");
  if (!view) { location.reload(); return; }  // no view: this browser has not come in any more, or it is a sentence alone
  leaveView();
  say("");
  document.title = next.title;
  document.querySelector(".strip nav").replaceWith(next.querySelector(".strip nav"));
  document.querySelector(".strip .job").replaceWith(next.querySelector(".strip .job"));
  byId("view").replaceChildren(...view.childNodes);
  for (const script of document.querySelectorAll("#view script[type=module]")) await import(`${script.getAttribute("src")}?${count += 1}`);
  draftChanged();
}

async function go(path, more) {
  try { await bring(await fetch(path, more)); } catch (error) { if (error.name !== "AbortError") say(GONE, "stop"); }
}

/** Look at the same view anew, as the house is another one now. */
export const lookAgain = () => go(location.href);

window.navigation?.addEventListener("navigate", (event) => {
  const to = new URL(event.destination.url), isOther = event.navigationType !== "reload" && !event.hashChange;
  if (!event.canIntercept || !isOther || event.downloadRequest !== null || event.formData || !VIEW.test(to.pathname)) return;
  event.intercept({ handler: () => go(to.href, { signal: event.signal }) });
});
document.addEventListener("submit", (event) => {
  event.preventDefault();
  go(event.target.action, { method: event.target.method });
});
