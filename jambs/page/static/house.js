// The list of openings: found by typing, walked by the keyboard; the one under the pointer stands out on its elevation.

import { byId, ofView, setText } from "/static/page.js";
import { lookAgain } from "/static/within.js";

const { hear, signal } = ofView();
const find = byId("find");
const rows = [...document.querySelectorAll("#openings tbody tr")];
const onWall = (mark) => document.querySelector(`.onwall[data-mark="${CSS.escape(mark)}"]`);

function search() {
  const words = find.value.toLowerCase().split(/\s+/).filter(Boolean);
  let count = 0;
  for (const row of rows) {
    const is = words.every((word) => row.textContent.toLowerCase().includes(word));
    row.hidden = !is;
    onWall(row.dataset.mark)?.classList.toggle("dim", !is);
    count += is;
  }
  setText(byId("foundcount"), words.length ? `${count} of ${rows.length}` : "");
}

function walk(event) {
  const way = { ArrowDown: 1, ArrowUp: -1 }[event.key];
  if (!way) return;
  const shown = rows.filter((row) => !row.hidden);
  const at = shown.findIndex((row) => row.contains(document.activeElement));
  const next = shown[at < 0 ? 0 : at + way];
  if (!next) return;
  event.preventDefault();
  next.querySelector("a").focus();
}

if (find) {
  find.addEventListener("input", search);
  find.addEventListener("keydown", (event) => { if (event.key === "ArrowDown") walk(event); });
  byId("openings").addEventListener("keydown", walk);
  for (const row of rows) {
    for (const [event, is] of [["pointerenter", true], ["pointerleave", false], ["focusin", true], ["focusout", false]]) {
      row.addEventListener(event, () => onWall(row.dataset.mark)?.classList.toggle("near", is));
    }
    row.addEventListener("click", (event) => { if (event.target.tagName !== "A") row.querySelector("a").click(); });
  }
  hear(document, "keydown", (event) => {
    if (event.key === "/" && event.target.tagName !== "INPUT") { event.preventDefault(); find.focus(); }
  });
}
/** Letters on an elevation are never smaller on the screen than they are said to be, however narrow it is; nor much larger. */
const MOST = 1.3;
const larger = () => parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;  // on a large screen, or where somebody asks for it
const lettersAt = (inches) => larger() * Math.max(inches, Math.min(1, MOST * inches));  // inches of the house to a pixel
const elevations = new ResizeObserver((seen) => {
  for (const { target } of seen) {
    const size = target.viewBox.baseVal, shown = target.getBoundingClientRect();
    target.classList.remove("tight");
    target.style.setProperty("--letters", lettersAt(Math.max(size.width / shown.width, size.height / shown.height)).toFixed(3));
    target.classList.toggle("tight", isTight([...target.querySelectorAll(".tagword")].map((one) => one.getBoundingClientRect())));
  }
});
const isTight = (boxes) => boxes.some((one, at) => boxes.slice(at + 1).some((other) =>
  Math.min(one.right, other.right) - Math.max(one.left, other.left) > 0 && Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top) > 0));
for (const one of document.querySelectorAll(".elevation svg")) elevations.observe(one);

/** The house is made anew: what was looked for and where the keyboard was is found again. */
const KEPT = "jambs-house";
let isAgain = false;
hear(document, "house", () => { isAgain = true; lookAgain(); });
signal.addEventListener("abort", () => {  // as late as can be: who types goes on until the new list is there
  if (!isAgain) return;
  const at = document.activeElement?.closest("tr")?.dataset.mark || "", isTyping = document.activeElement === find;
  sessionStorage.setItem(KEPT, JSON.stringify({ looked: find?.value || "", at, caret: isTyping && [find.selectionStart, find.selectionEnd] }));
});
const kept = JSON.parse(sessionStorage.getItem(KEPT) || "null");
sessionStorage.removeItem(KEPT);
if (kept && find) {
  find.value = kept.looked;
  search();
  if (kept.caret) { find.focus(); find.setSelectionRange(...kept.caret); }
  rows.find((row) => row.dataset.mark === kept.at)?.querySelector("a").focus();
}
