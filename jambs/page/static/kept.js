// What is not saved, kept in this browser: were the program to end before, it offers it when the job is opened again.

const ROOM = "jambs-unsaved";
const keyOf = (draft, run) => `${ROOM} ${run} ${draft.file}`;
let isUnsaved = false, within = -Infinity;  // when it was last gone to another view

/** Keep the steps of this run, under its own name; what is saved or taken back is kept no longer. */
export function keep(draft) {
  isUnsaved = draft.lines.length > 0;
  const key = keyOf(draft, draft.run);
  if (!draft.unsaved.length) { localStorage.removeItem(key); return; }
  const text = JSON.stringify(draft.unsaved);
  try { if (localStorage.getItem(key) !== text) localStorage.setItem(key, text); } catch { /* no room: leaving is asked about all the same */ }
}

/** Steps of earlier runs of this job, by the key that they are kept under. */
export function keptBefore(draft) {
  const keys = Object.keys(localStorage).filter((key) => key.startsWith(`${ROOM} `) && key.endsWith(` ${draft.file}`) && key !== keyOf(draft, draft.run));
  return keys.map((key) => ({ key, steps: read(key) })).filter((one) => one.steps.length);
}

function read(key) {
  try { return JSON.parse(localStorage.getItem(key)) || []; } catch { return []; }
}

/** Take them out, so that no other window does too; they go back where the program does not take them. */
export function takeOut(key) {
  const steps = read(key);
  localStorage.removeItem(key);
  return steps;
}

export const putBack = (key, steps) => localStorage.setItem(key, JSON.stringify(steps));

// Leaving the page with changes that are not saved is asked about; going from view to view is not leaving it (within.js). Where
// the browser loads each view anew, its own buttons for back and forth alone are not told apart from leaving.
const SOON = 2000;
const goWithin = () => { within = performance.now(); };
const isOwn = (url) => new URL(url, location.href).origin === location.origin;
window.navigation?.addEventListener("navigate", (event) => { if (isOwn(event.destination.url)) goWithin(); });
document.addEventListener("click", (event) => {
  const link = event.target.closest?.("a[href]");
  if (link && isOwn(link.href)) goWithin();
});
document.addEventListener("keydown", (event) => {
  const isBackOrForth = (event.altKey || event.metaKey) && /^Arrow(Left|Right)$|^[[\]]$/.test(event.key);
  if (isBackOrForth || event.key === "F5") goWithin();
});
document.addEventListener("mousedown", (event) => { if (event.button > 2) goWithin(); });
window.addEventListener("beforeunload", (event) => { if (isUnsaved && performance.now() - within > SOON) event.preventDefault(); });
