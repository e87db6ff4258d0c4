// The strip at the top: the draft with its lines, back and forth, save, a file changed meanwhile; light and dark; close.

import { keep, keptBefore, putBack, takeOut } from "/static/kept.js";
import "/static/within.js";
import { ask, byId, draftChanged, el, heard, inTurn, say, setText } from "/static/page.js";

const KEPT = "jambs-scheme";
const FEW = 5;  // steps that are told one by one
const WATCH = 4000;
let number = null, wasUnheard = false, shown = "";

function show(draft) {
  const changed = draft.lines.length;
  const [back, forth, save] = ["back", "forth", "save"].map((name) => document.querySelector(`[data-draft=${name}]`));
  back.disabled = !draft.back;
  forth.disabled = !draft.forth;
  save.disabled = !changed;
  back.title = draft.back ? `Take back: ${draft.back} (Ctrl+Z)` : "Nothing to take back since the program was started";
  forth.title = draft.forth ? `Do again: ${draft.forth} (Ctrl+Y)` : "Nothing to do again";
  const lines = draft.lines.flat().filter((line) => line.kind === "new" || line.kind === "gone").length;
  setText(byId("changes"), draft.is_new ? "New job" : changed ? `${lines} line${lines > 1 ? "s" : ""} changed` : "No changes");
  byId("changes").disabled = !changed && !draft.theirs;
  call(draft.name);
  fill(draft);
  keep(draft);
  offer(draft);
  if (number !== null && draft.number !== number) document.dispatchEvent(new CustomEvent("house", { detail: draft }));
  number = draft.number;
}

/** The job by its name of now, which a field may have changed since the page was loaded. */
function call(name) {
  const job = document.querySelector(".strip .job"), before = job.textContent;
  setText(job, name);
  if (job.textContent !== before) document.title = document.title.replace(before, () => job.textContent);
}

/** Anew where they are others: what is read, marked or pressed there must not go at each look. */
function fill(draft) {
  const box = byId("lines"), now = JSON.stringify([draft.file, draft.tables, draft.lines, draft.theirs]);
  if (now === shown) return;
  shown = now;
  const mine = el("div", {}, el("b", {}, "What saving changes in "), [draft.file, ...draft.tables].join(", "), ...draft.lines.map(group));
  if (!draft.theirs) {
    box.replaceChildren(mine);
    if (!draft.lines.length) open(false);
    return;
  }
  const theirs = el("div", {}, el("b", {}, "What somebody else changed in it meanwhile"), ...draft.theirs.map(group));
  const choose = el("p", {},
    button("Put my changes onto the file as it is now", "onto"), " ", button("Take the file as it is now, forget mine", "theirs"));
  box.replaceChildren(el("p", {}, "The job was changed by another program. Nothing is overwritten: choose."), choose, el("div", { class: "two" }, mine, theirs));
  open(true);
}

/** Changes that an earlier run was left with: never done by themselves. */
function offer(draft) {
  const found = keptBefore(draft), box = byId("earlier"), key = found.map((one) => one.key).join();
  if (box.dataset.of === key) return;
  box.dataset.of = key;
  box.hidden = !found.length;
  box.replaceChildren(...found.map(({ key, steps }) => el("p", {},
    el("b", {}, `${steps.length} change${steps.length > 1 ? "s" : ""} not saved when the program ended: `),
    `${steps.slice(-FEW).map((step) => step.words).join("; ")}${steps.length > FEW ? "; and more before" : ""}. `,
    choice("Take them up again", () => takeUp(key)), " ", choice("Forget them", () => { takeOut(key); draftChanged(); }))));
}

function choice(words, act) {
  const made = el("button", { type: "button" }, words);
  made.addEventListener("click", act);
  return made;
}

const takeUp = inTurn(async (key) => {
  const steps = takeOut(key);
  if (!steps.length) { draftChanged(); return; }
  const draft = await ask("/draft/again", { steps });
  if (!draft.ok) putBack(key, steps);
  if (draft.isHeard) show(draft);
  say(draft.said || "Taken up again, and not saved yet.", draft.ok ? "" : "stop");
});

const group = (lines) => el("pre", {}, ...lines.map((line) => el("span", { class: line.kind }, line.text || " ")));

const button = (words, act) => choice(words, () => post(act));

function open(is) {
  byId("lines").hidden = !is;
  byId("changes").setAttribute("aria-expanded", String(is));
}

const post = inTurn(async (act) => {
  await heard();  // a field is left by the very press that saves
  const draft = await ask(`/draft/${act}`, {});
  if (draft.isHeard) show(draft);
  if (draft.said) say(draft.said, "stop");
  else if (act === "save") { say("Saved."); open(false); }
  else say("");
});

/** While a hand holds a window, what others change has to wait: the house is not made anew under it. */
const isHeld = () => document.querySelector(".held") !== null;

async function look() {
  const draft = await ask("/draft");
  if (draft.isHeard) show(draft); else say(draft.said, "stop");
  if (draft.isHeard && wasUnheard) say("");
  wasUnheard = !draft.isHeard;
}

function scheme(wanted) {
  document.documentElement.dataset.scheme = wanted;
  setText(byId("scheme"), wanted === "dark" ? "Light" : "Dark");
}

const remembered = localStorage.getItem(KEPT);
scheme(remembered || (matchMedia("(prefers-color-scheme: dark)").matches ? "dark" : "light"));
byId("scheme").addEventListener("click", () => {
  const next = document.documentElement.dataset.scheme === "dark" ? "light" : "dark";
  localStorage.setItem(KEPT, next);
  scheme(next);
});
byId("stop").addEventListener("click", async () => {
  const isUnsaved = !document.querySelector("[data-draft=save]").disabled, work = await ask("/papers/work");
  const open = [
    isUnsaved && "There are changes that are not saved; this browser keeps them, and offers them when the job is opened again.",
    work.is_running && "Papers are being written; closing stops that.",
  ].filter(Boolean);
  if (open.length && !confirm([...open, "Close all the same?"].join(" "))) return;
  const answer = await ask("/stop", {});
  if (!answer.isHeard) { say(answer.said, "stop"); return; }
  clearInterval(watching);
  document.body.replaceChildren(el("main", { class: "sentence" }, el("h1", {}, "jambs"), el("p", {}, answer.said)));
});
for (const one of document.querySelectorAll("[data-draft]")) one.addEventListener("click", () => post(one.dataset.draft));
byId("changes").addEventListener("click", () => open(byId("lines").hidden));
document.addEventListener("keydown", (event) => {
  const act = { s: "save", z: event.shiftKey ? "forth" : "back", y: "forth" }[event.key.toLowerCase()], isField = /^(INPUT|TEXTAREA|SELECT)$/.test(event.target.tagName);
  if (!(event.ctrlKey || event.metaKey) || !act || (isField && act !== "save")) return;  // a field takes back its own letters
  event.preventDefault();
  if (isField) event.target.dispatchEvent(new Event("change", { bubbles: true }));  // left with what is typed
  post(act);
});
document.addEventListener("input", (event) => { if (event.target.closest("#fields")) document.querySelector("[data-draft=save]").disabled = false; });
document.addEventListener("draft", look);
window.addEventListener("focus", look);
const watching = setInterval(() => { if (!document.hidden && !isHeld()) look(); }, WATCH);
draftChanged();
