// One opening seen square on, from the room and from outside: figures that are sent, the nearest last.

import { el, svg } from "/static/page.js";

const AROUND = 2;

export function showViews(box, views) {
  box.replaceChildren(...views.map((view) => el("figure", {}, el("div", { class: "sheet" }, picture(view)), el("figcaption", {}, el("b", {}, view.title), ` ${view.words}`))));
}

export function picture(view) {
  const across = view.shapes.flatMap((shape) => shape.points.filter((_, at) => at % 2 === 0));
  const up = view.shapes.flatMap((shape) => shape.points.filter((_, at) => at % 2));
  const [left, right, low, high] = [Math.min(...across), Math.max(...across), Math.min(...up), Math.max(...up)];
  return svg("svg", { viewBox: `${left - AROUND} ${-high - AROUND} ${right - left + 2 * AROUND} ${high - low + 2 * AROUND}`, role: "img", "aria-label": `${view.title}: ${view.words}` },
    ...view.shapes.map((shape) => svg("path", { class: `v ${shape.kind}`, d: path(shape) }, shape.mark ? svg("title", {}, shape.mark) : null)));
}

function path(shape) {
  let d = "";
  for (let at = 0; at < shape.points.length; at += 2) d += `${at ? "L" : "M"}${shape.points[at]} ${-shape.points[at + 1]}`;
  return shape.kind === "opens" ? d : `${d}Z`;
}
