// One opening: the picture, the figures, the lists; and the window that is pushed through the wall.

import { byId, draftChanged, el, inTurn, ofView, say, setText } from "/static/page.js";
import { lookAgain } from "/static/within.js";
import { addHatches } from "/static/hatches.js";
import { Hand } from "/static/hand.js";
import { SectionPicture } from "/static/section.js";
import { SpacePicture } from "/static/space.js";
import { drawSwing } from "/static/swing.js";
import { CurvesPicture } from "/static/curves.js";
import { showBoards, showFigures, showFindings, showOthers, showParts } from "/static/lists.js";
import { showViews } from "/static/views.js";

const { ask, hear } = ofView();
const RESTS = 90;
const MEASURED = "This opening was measured: its window stands where it was found. Move the plan at an opening of this wall that is planned.";
let record = JSON.parse(byId("record").textContent);
let isHeld = false, isLate = false, isGone = false, wanted = null, reach = 0, resting = 0;
const mark = record.fixed.mark;

addHatches();
const picture = new SectionPicture(byId("section"), record.fixed, { start, to, end, step, named, redrawn: () => curves.draw(picture.now, record.fixed) });
const space = new SpacePicture(byId("space"));
const curves = new CurvesPicture(byId("curves"), picture);
const hand = new Hand(mark, (answer) => {
  if (!isHeld) return;
  say(answer.wrong ? answer.wrong[0] : "", answer.wrong ? "stop" : "");
  if (answer.now) show(answer.now);
});

function show(now) {
  picture.draw(now);
  curves.draw(now, record.fixed);
  showFigures(now.figures);
  setText(byId("why"), now.why);
  showFindings(now.findings);
  showOthers(now.others);
  drawSwing(byId("swing"), byId("swingsaid"), now.swing, now.figures);
  if (now.parts) showParts(now.parts);
  showBoards(byId("boards"), now.boards);
  if (now.views) showViews(byId("views"), now.views);
}

function showAll() {
  const { fixed, now } = record;
  picture.show(fixed);
  byId("banner").replaceChildren(...fixed.banner.map((one) => el("span", {}, one.text)));
  setText(byId("about"), fixed.about);
  byId("unplanned").hidden = !fixed.unplanned.length;
  setText(byId("unplanned"), `The outside of the house cannot be planned yet: ${fixed.unplanned.join("; ")}.`);
  const others = fixed.together.length - 1;
  setText(byId("together"), fixed.own ? `${mark} alone: it has a position of its own` : others ? `all of wall “${fixed.wall}”: ${fixed.together.join(", ")}` : `wall “${fixed.wall}”, which has this window only`);
  const isRun = fixed.run.length > 0;
  setText(byId("alone"), isRun ? `not this window alone: ${fixed.run.join(", ")} are trimmed as one` : "this window alone");
  for (const one of document.querySelectorAll("[name=alone]")) one.disabled = fixed.own || fixed.measured || (isRun && one.value === "yes");
  for (const one of document.querySelectorAll("[data-cut]")) one.hidden = !now.sections.some((section) => section.cut === one.dataset.cut);
  show(now);
  showSpace();
}

async function showSpace() {
  const parts = await (await fetch(`/openings/${encodeURIComponent(mark)}/parts`)).json();
  space.show(parts, record.now.frames);
}

const alone = () => document.querySelector("[name=alone][value=yes]").checked;

// ---- the hand

function start() {
  if (record.fixed.measured) { say(MEASURED); return false; }
  isHeld = true;
  hand.take(alone());
  return true;
}

function to(plane, near) {
  if (!isHeld) return;  // it was let go by the keyboard
  [wanted, reach] = [plane, near];
  hand.want(plane, near, picture.cut);
  clearTimeout(resting);
  resting = setTimeout(() => { if (isHeld) hand.want(wanted, reach, picture.cut, true); }, RESTS);
}

async function end(isMeant) {
  clearTimeout(resting);
  isHeld = false;
  hand.let();
  const put = wanted;
  wanted = null;
  if (isMeant && put !== null) await place(put, reach);
  else show(record.now);
  if (isLate) refresh();
}

async function place(plane, near) {
  const answer = await ask(`/openings/${encodeURIComponent(mark)}/position`, { plane, reach: near, alone: alone() });
  if (!answer.ok) {
    say(answer.wrong[0], "stop");
    show(record.now);
    return;
  }
  record = answer;
  showAll();
  const said = record.now.figures.slice(0, 2).map((one) => `${one.name} ${one.text}`).join(", ");
  say(`${mark}: ${said}. Not saved yet.`);
  draftChanged();
}

const stepInTurn = inTurn((count) => place(record.now.plane + count * record.fixed.step, 0));
const namedInTurn = inTurn(placeNamed);

function step(count) {
  if (record.fixed.measured) say(MEASURED); else stepInTurn(count);
}

function named(way) {
  if (record.fixed.measured) say(MEASURED); else namedInTurn(way);
}

function placeNamed(way) {
  const places = record.fixed.places, now = record.now.plane;
  const next = way === Infinity ? places.at(-1) : way === -Infinity ? places[0]
    : way > 0 ? places.find((one) => one.plane > now + 1e-4) : places.findLast((one) => one.plane < now - 1e-4);
  return next ? place(next.plane, 1e-3) : null;
}

// ---- what is chosen

for (const button of document.querySelectorAll("[data-cut]")) {
  button.addEventListener("click", () => {
    for (const one of document.querySelectorAll("[data-cut]")) one.setAttribute("aria-pressed", String(one === button));
    picture.cut = button.dataset.cut;
    picture.draw(record.now);
    curves.draw(record.now, record.fixed);
  });
}
for (const one of document.querySelectorAll("[name=alone]")) one.addEventListener("change", refresh);

/** The house is another one; not under the hand. */
async function refresh() {
  isLate = isHeld;
  if (isLate) return;
  const found = await ask(`/openings/${encodeURIComponent(mark)}/record?alone=${alone() ? "yes" : "no"}`);
  isLate = isHeld;  // it was taken hold of meanwhile
  if (isLate) return;
  if (found.is_unmade) { lookAgain(); return; }
  if (!found.ok) { isGone = true; say(found.wrong?.[0] || "This opening is no longer in the job.", "stop"); return; }
  if (isGone) say("");
  isGone = false;
  record = found;
  showAll();
}

hear(document, "house", refresh);
hear(document, "keydown", (event) => {
  if (event.target !== document.body || event.ctrlKey || event.metaKey) return;
  const link = document.querySelector({ "[": "[rel=prev]", "]": "[rel=next]" }[event.key] || "none");
  if (link) link.click();
});
showAll();
curves.ask(mark, refresh);  // the place of least heat is known then
