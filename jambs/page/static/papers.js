// The papers: written by a verb with its progress, listed, looked at as they print.

import { byId, draftChanged, el, ofView, refill, say, setText } from "/static/page.js";

const { ask, hear } = ofView();
const EVERY = 400;
const FEW = 9;  // papers of a folder that stand open at first
const STOPPED = 130;  // how a verb ends that was stopped
let record = JSON.parse(byId("record").textContent);
const opened = new Map();
let chosen = null, lastVerb = "";

function show() {
  setText(byId("folder"), record.folder);
  refill(byId("verbs"), ...record.verbs.map(verbButton));
  byId("stale").replaceChildren(...record.stale.map((one) => el("li", {}, el("span", {}, el("span", { class: "state stale" }, "stale")), el("span", {}, `${one.count} paper${one.count > 1 ? "s" : ""} of ${one.verb}: ${one.why}`))));
  byId("unread").hidden = !record.unread_table;
  setText(byId("unreadwords"), `${record.unread_table} stands beside the job, which does not read it yet: filled in, or by telephone, it takes the measures.`);
  byId("settle").hidden = !record.is_to_settle;
  refill(byId("list"), ...(record.groups.length ? record.groups.map(group) : [el("p", { class: "soft" }, "No papers yet: build them.")]));
  if (record.wrong.length) say(record.wrong[0], "stop");
  showWork(record.work);
}

function verbButton(one) {
  const button = el("button", { type: "button", "data-verb": one.verb, title: one.writes, class: one.verb === "build" ? "main" : null, disabled: record.work.is_running }, one.words);
  button.addEventListener("click", () => start(one.verb, false));
  return button;
}

function group(one) {
  return el("section", {}, el("h2", {}, one.words), ...one.folders.map((folder) =>
    folderBox(one, folder, el("summary", {}, folder.name || "of the house", el("span", { class: "soft" }, ` ${folder.papers.length}`)), el("ul", {}, ...folder.papers.map(paper)))));
}

/** It stands open or closed as it was left. */
function folderBox(one, folder, ...children) {
  const key = `${one.words} ${folder.name}`, box = el("details", { open: opened.get(key) ?? (folder.papers.length < FEW || !folder.name) }, ...children);
  box.addEventListener("toggle", () => opened.set(key, box.open));
  return box;
}

function paper(one) {
  const link = el("a", { href: `/paper/${one.key}`, "data-key": one.key, "aria-current": one.key === chosen?.key, ...(one.is_shown ? { target: "paper" } : { download: one.name }) }, one.name);
  if (one.is_shown) link.addEventListener("click", (event) => { if (!event.ctrlKey && !event.metaKey) { event.preventDefault(); look(one); comeUp(); } });
  return el("li", {}, link, one.why ? el("span", { class: "state stale", title: one.why }, "stale") : null, one.why ? el("span", { class: "soft" }, one.why) : null);
}

function look(one) {
  chosen = one;
  for (const link of document.querySelectorAll("[data-key]")) link.toggleAttribute("aria-current", link.dataset.key === one.key);
  const open = el("a", { class: "button", href: `/paper/${one.key}`, target: "_blank", rel: "noopener" }, "Open in a window of its own, to print");
  byId("viewer").replaceChildren(el("p", { class: "viewed" }, el("b", {}, one.name), " ", open), el("iframe", { src: `/paper/${one.key}#navpanes=0`, title: one.name }));
}

/** On a narrow screen the paper lies under the list: bring it up. */
function comeUp() {
  const viewer = byId("viewer");
  if (viewer.getBoundingClientRect().top > innerHeight / 2) viewer.scrollIntoView({ block: "start" });
}

async function start(verb, overwrite) {
  lastVerb = verb;
  say("");
  const state = await ask("/papers/work", { verb, overwrite });
  if (!state.ok) { say(state.said, "stop"); return; }
  const isAtVerbs = byId("verbs").contains(document.activeElement);
  showWork(state);
  if (isAtVerbs) byId("stopwork").focus();  // no button of a verb can be pressed now
  follow();
}

function showWork(state) {
  const isAtStop = document.activeElement === byId("stopwork");
  byId("work").hidden = !state.verb;
  const failed = state.code !== null && state.code !== 0;
  setText(byId("workwords"), state.is_running ? `${state.verb}: ${state.what || "working"}${state.of ? `, ${state.done} of ${state.of}` : " …"}` : state.verb ? `${state.verb}: ${state.code === STOPPED ? "stopped" : failed ? "not written" : "done"}` : "");
  const bar = byId("progress");
  bar.hidden = !state.is_running;
  if (state.of) { bar.max = state.of; bar.value = state.done; } else bar.removeAttribute("value");
  byId("stopwork").hidden = !state.is_running;
  byId("worklines").hidden = !state.lines.length;
  setText(byId("worklines"), state.lines.join("\n"));
  byId("overwrite").hidden = !(failed && state.lines.some((line) => line.includes("--overwrite")));
  for (const button of document.querySelectorAll("[data-verb]")) button.disabled = state.is_running;
  if (isAtStop && !state.is_running) document.querySelector(`[data-verb="${CSS.escape(state.verb)}"]`)?.focus();
}

async function follow() {
  const state = await ask("/papers/work");
  if (!state.isHeard) { say(state.said, "stop"); return; }
  if (state.is_running) { showWork(state); setTimeout(follow, EVERY); return; }
  const found = await ask("/papers/list");  // done is said with the papers that are there now
  if (found.isHeard) record = found; else showWork(state);
  show();
  if (chosen) look(chosen);
}

/** A line of the job file, as any field would write it: it is seen, taken back and saved like all others. */
byId("read").addEventListener("click", async () => {
  const { number } = await ask("/job/form");
  const answer = await ask("/job/change", { act: "add", path: [], under: ["measures"], value: record.unread_table, number });
  say(answer.ok ? "Not saved yet." : answer.said, answer.ok ? "" : "stop");
  draftChanged();
});
byId("stopwork").addEventListener("click", () => ask("/papers/stop", {}));
byId("overwrite").addEventListener("click", () => start(lastVerb || record.work.verb, true));
hear(document, "house", async () => {
  const found = await ask("/papers/list");
  if (found.isHeard) { record = found; show(); }
});
show();
if (record.work.is_running) follow();
