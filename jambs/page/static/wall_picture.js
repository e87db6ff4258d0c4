// A wall as its layers lie, inside at the left: each is taken hold of and drawn to its place. The program says what comes of it.

import { el, svg } from "/static/page.js";

const WIDE = 60;  // of an inch, in the picture's own units
const HIGH = .23;  // of a wall, to its width, as page.css makes room for it
const LEAST = 3;

/** `move(from, to)` is called with numbers of layers; without it nothing can be taken hold of. */
export function wallPicture(stack, name, move) {
  const deep = stack.at(-1).to * WIDE, high = deep * HIGH, mark = svg("path", { class: "goes" }), told = el("span", { class: "layer-told" });
  const boxes = stack.map((layer) => svg("rect", { class: `s ${layer.stuff}`, x: layer.from * WIDE, y: 0, width: Math.max((layer.to - layer.from) * WIDE, LEAST), height: high }, svg("title", {}, words(layer))));
  const drawing = svg("svg", { class: move ? "is-drawn" : null, viewBox: `0 0 ${deep} ${high}`, role: "img", "aria-label": `Wall ${name}, inside at the left: ${stack.map((layer) => layer.name).join(", ")}` }, ...boxes, mark);
  if (move) letDraw({ drawing, boxes, stack, mark, told, high }, move);
  return el("figure", { class: "wallpicture" }, drawing, el("figcaption", { class: "soft" }, el("span", {}, "INSIDE"), told, el("span", {}, "OUTSIDE")));
}

const words = (layer) => `${layer.name} ${layer.text}`;

function letDraw({ drawing, boxes, stack, mark, told, high }, move) {
  let from = -1, to = -1;
  const under = ({ clientX }) => {
    const { left, width } = drawing.getBoundingClientRect(), depth = (clientX - left) / width * stack.at(-1).to;
    return Math.max(0, Math.min(stack.length - 1, stack.findIndex((layer) => depth < layer.to) + (depth >= stack.at(-1).to ? stack.length : 0)));
  };
  const show = () => {
    const x = WIDE * (to > from ? stack[to].to : stack[Math.max(to, 0)].from);
    mark.setAttribute("d", from >= 0 && to !== from ? `M${x} 0V${high}` : "");
  };
  const release = () => {
    boxes[from]?.classList.remove("moved");
    from = to = -1;
    show();
    document.removeEventListener("keydown", leave);
  };
  const leave = (event) => { if (event.key === "Escape") release(); };
  drawing.addEventListener("pointerdown", (event) => {
    if (event.button) return;
    event.preventDefault();  // no text is marked meanwhile
    from = to = under(event);
    boxes[from].classList.add("moved");
    told.textContent = words(stack[from]);
    document.addEventListener("keydown", leave);
    drawing.setPointerCapture(event.pointerId);
  });
  drawing.addEventListener("pointermove", (event) => {
    if (from < 0) { told.textContent = words(stack[under(event)]); return; }
    to = under(event);
    show();
  });
  drawing.addEventListener("pointerleave", () => { if (from < 0) told.textContent = ""; });
  drawing.addEventListener("pointerup", () => {
    const [one, other] = [from, to];
    release();
    if (one >= 0 && other !== one) move(one, other);
  });
  drawing.addEventListener("pointercancel", release);
}
