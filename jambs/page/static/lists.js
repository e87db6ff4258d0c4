// Figures, findings, openings that move along, parts: texts that are sent, each in its place.

import { byId, el, refill, setText } from "/static/page.js";

const LONG = 12;

export function showFigures(figures) {
  const box = byId("figures");
  if (box.children.length !== figures.length) {
    box.replaceChildren(...figures.map((one) => el("div", { "data-figure": one.name }, el("dt", {}, one.name), el("dd", { class: "figure" }), el("dd", { class: "under" }))));
  }
  figures.forEach((one, at) => {
    const [, text, under] = box.children[at].children;
    setText(text, one.text);
    text.classList.toggle("long", one.text.length > LONG);
    setText(under, one.under);
  });
}

export function showFindings(findings) {
  const rows = findings.map((one) => el("li", {}, el("span", {}, el("span", { class: `state ${one.weight}` }, one.weight)), el("span", {}, one.text)));
  refill(byId("findings"), ...(rows.length ? rows : [el("li", {}, el("span"), el("span", { class: "soft" }, "Nothing to check or to note."))]));
}

export function showOthers(others) {
  byId("othersbox").hidden = !others.length;
  const table = byId("others");
  if ([...table.querySelectorAll("a")].map((one) => one.textContent).join() !== others.map((one) => one.mark).join()) {
    refill(table,
      el("thead", {}, el("tr", {}, ...["mark", "interior", "exterior"].map((head) => el("th", { scope: "col" }, head)))),
      el("tbody", {}, ...others.map((one) => el("tr", {}, el("th", { scope: "row" }, el("a", { href: `/openings/${encodeURIComponent(one.mark)}`, title: one.room }, one.mark)), el("td"), el("td")))));
  }
  others.forEach((one, at) => {
    const cells = table.tBodies[0].rows[at].cells;
    setText(cells[1], one.interior);
    setText(cells[2], one.exterior);
  });
}

/** While the hand moves nothing is sent: what stands there is of the place before, and says so until the hand rests. */
export function showBoards(box, boards) {
  box.classList.toggle("older", !boards);
  if (!boards) return;
  if (boards.wrong.length) {
    refill(box, ...boards.wrong.map((sentence) => el("p", { class: "complaint" }, sentence)));
    return;
  }
  if (!boards.lines.length) {
    refill(box, el("p", { class: "soft" }, "No boards: nothing of it is sawn."));
    return;
  }
  refill(box,
    el("p", {}, el("b", { class: "cost", id: "cost" }, boards.cost), " ", el("span", { class: "soft" }, boards.note)),
    el("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": "Boards" }, el("table", {}, el("tbody", {}, ...boards.lines.map((line) =>
      el("tr", {}, el("td", { class: "number" }, `${line.count} ×`), el("th", { scope: "row" }, line.board), el("td", { class: "number" }, line.cost), el("td", { class: "soft" }, line.for)))))));
}

const HEADS = ["mark", "part", "board", "thick", "rip", "length", "work"];

export function showParts(groups) {
  refill(byId("parts"), ...groups.map((group) => el("div", { class: "scroll", tabindex: 0, role: "region", "aria-label": group.title },
    el("table", { class: "parts" }, el("caption", {}, `${group.title} (${group.parts.length})`),
      el("thead", {}, el("tr", {}, ...HEADS.map((head) => el("th", { scope: "col" }, head)))),
      el("tbody", {}, ...group.parts.map(row))))));
}

function row(part) {
  const rip = part.taper ? part.taper.map((end) => `${end.width} ${end.at}`).join(", ") : part.width;
  return el("tr", {}, el("th", { scope: "row" }, part.mark), el("td", {}, `${part.name}${part.position ? `, ${part.position}` : ""}`), el("td", { class: "soft" }, part.board),
    ...[["thick", part.thickness], ["rip", rip], ["length", part.length]].map(([head, text]) => el("td", { class: "size", "data-head": head }, text)),
    el("td", { class: "soft" }, [part.ends, ...part.work].filter(Boolean).join("; ")));
}
