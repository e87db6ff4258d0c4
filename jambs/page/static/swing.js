// The sash seen along its hinge: shut, and as far open as it goes; what stops it stands out.

import { setText, svg } from "/static/page.js";

const MARGIN = 2;

export function drawSwing(box, caption, swing, figures) {
  const said = figures.find((one) => one.name === "sash opens");
  const open = box.closest("figure");
  open.hidden = !swing;
  if (!swing) return;
  const side = swing.outward ? -1 : 1;  // outside is above, inside below, as in the plan
  const flip = (points) => points.map((value, at) => at % 2 ? value * side : value);
  const shapes = swing.obstacles.map((one) => ({ kind: `obstacle ${one.what}${one.what === swing.met ? " met" : ""}`, points: flip(one.points) }));
  shapes.push({ kind: "shut", points: flip(swing.shut) }, { kind: "open", points: flip(swing.open) });
  const leaf = swing.open.filter((_, at) => at % 2 === 0);
  const xs = [Math.min(-4, ...leaf.map((x) => x - MARGIN)), swing.span + 4], ys = shapes.flatMap((one) => one.points.filter((_, at) => at % 2));
  const [low, high] = [Math.min(...ys) - MARGIN, Math.max(...ys) + MARGIN];
  const root = svg("svg", { viewBox: `${xs[0]} ${low} ${xs[1] - xs[0]} ${high - low}`, role: "img", "aria-label": `The sash opens ${said.text}, ${said.under}` },
    ...shapes.map((one) => svg("path", { class: `s ${one.kind}`, d: path(one.points) })));
  box.replaceChildren(root);
  setText(caption, `The sash along its hinge: opens ${said.text}, ${said.under}`);
}

function path(points) {
  let d = "";
  for (let at = 0; at < points.length; at += 2) d += `${at ? "L" : "M"}${points[at]} ${points[at + 1]}`;
  return `${d}Z`;
}
