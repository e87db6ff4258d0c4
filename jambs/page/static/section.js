// One section on the screen, to scale: inside at the left. The window in it can be taken hold of.

import { setAttribute, setText, svg } from "/static/page.js";

const SIDE = 178;
const NARROW_SIDE = 66;
const NARROW = 640;
const ROW = 17;
const TOP = { places: 46, chain: 62 };
const OVER = { low: 1.1, high: 2.1 };  // of the drawing's depth that is shown past the wall [in]
const LETTER = 8.6;
const LAYER_LETTERS = '12px "Sheet"';  // as in page.css

export class SectionPicture {
  /** moves: { start(), to(plane, reach), end(), step(count, far), named(way), redrawn() } */
  constructor(box, fixed, moves) {
    this.box = box;
    this.fixed = fixed;
    this.moves = moves;
    this.cut = "jamb";
    this.root = svg("svg", { role: "group", "aria-label": "Section" });
    this.ground = svg("g", { "aria-hidden": "true" });
    this.shapes = svg("g", { "aria-hidden": "true" });
    this.over = svg("g", { "aria-hidden": "true" });
    this.grip = this.#grip();
    this.root.append(this.ground, this.shapes, this.over, this.grip);
    box.append(this.root);
    this.shapes.addEventListener("pointerdown", (event) => { if (event.target.classList.contains("holds")) this.#take(event); });
    new ResizeObserver(() => { if (this.now) { this.draw(this.now); this.moves.redrawn(); } }).observe(box);
  }

  show(fixed) { this.fixed = fixed; }

  get isNarrow() { return this.side === NARROW_SIDE; }

  /** Where a depth and a height are on the screen. */
  x(depth) { return this.left + (depth + OVER.low) * this.scale; }
  y(up) { return this.top + (this.high - up) * this.scale; }

  draw(now) {
    this.now = now;
    const section = now.sections.find((one) => one.cut === this.cut) || now.sections[0];
    this.#measure(section);
    this.#drawShapes(section);
    this.#drawOver(now, section);
    this.#placeGrip(now, section);
  }

  #measure(section) {
    const larger = largerLetters(), width = Math.max(this.box.clientWidth / larger, 300);
    this.side = width < NARROW ? NARROW_SIDE : SIDE;
    const deep = this.fixed.reach[1] + OVER.low + OVER.high;
    const tall = section.high - section.low;
    const room = Math.min(window.innerHeight / larger * 0.58, 620);
    this.scale = Math.min((width - 2 * this.side) / deep, room / tall);
    this.left = (width - deep * this.scale) / 2;
    this.top = TOP.places + (section.wall_below ? TOP.chain : this.#stack());
    this.high = section.high;
    const foot = section.wall_below ? this.#stack() : TOP.chain;
    this.bottom = this.top + tall * this.scale;
    this.width = width;
    setAttribute(this.root, "viewBox", `0 0 ${width} ${Math.ceil(this.bottom + foot + 8)}`);
    setAttribute(this.root, "aria-label", `${section.title}, inside at the left`);
  }

  #stack() { return (Math.ceil(this.fixed.layers.length / 2) + 1) * ROW; }

  #drawShapes(section) {
    const paths = this.shapes.children;
    section.shapes.forEach((shape, at) => {
      const path = paths[at] || this.shapes.appendChild(svg("path"));
      setAttribute(path, "class", `s ${shape.stuff}${shape.holds ? " holds" : ""}`);
      setAttribute(path, "d", this.#path(shape.points));
    });
    while (paths.length > section.shapes.length) paths[paths.length - 1].remove();
  }

  #path(points) {
    let d = "";
    for (let at = 0; at < points.length; at += 2) d += `${at ? "L" : "M"}${this.x(points[at]).toFixed(2)} ${this.y(points[at + 1]).toFixed(2)}`;
    return `${d}Z`;
  }

  #drawOver(now, section) {
    const drawn = [...this.#places(now), ...this.#chain(now.chains.frame, section), ...this.#layers(section), this.#flange(now)];
    this.over.replaceChildren(...drawn);
  }

  #places(now) {
    const drawn = [];
    for (const place of this.fixed.places) {
      const on = Math.abs(place.plane - now.plane) < 1e-4, x = this.x(place.plane);
      drawn.push(svg("path", { class: `place${on ? " on" : ""}`, d: `M${x} 30V${this.bottom}` }));
      drawn.push(svg("path", { class: `place-tick${on ? " on" : ""}`, d: `M${x - 5} 22h10l-5 9z` }, svg("title", {}, place.name)));
      if (on) drawn.push(text(place.name, clamp(x, this.width, place.name), 16, "place-name", "middle"));
    }
    return drawn;
  }

  #flange(now) {
    const x = this.x(now.chains.flange);
    return svg("path", { class: "flange", d: `M${x} ${this.top - 8}V${this.bottom + 6}` });
  }

  #chain(steps, section) {
    const y = section.wall_below ? this.top - 18 : this.bottom + 26, drawn = [];
    const out = section.wall_below ? -1 : 1;
    let raised = 0;
    for (const step of steps) {
      const [a, b] = [this.x(step.from), this.x(step.to)], middle = (a + b) / 2;
      drawn.push(svg("path", { class: "dim", d: `M${a} ${y}H${b}${tick(a, y)}${tick(b, y)}` }));
      const fits = b - a > step.text.length * LETTER + 4;
      raised = fits ? 0 : raised % 2 + 1;
      const level = fits ? y - 6 : y + out * (10 + 15 * raised) - (out < 0 ? -4 : 0);
      if (!fits) drawn.push(svg("path", { class: "leader", d: `M${middle} ${y}V${level + (out < 0 ? 3 : -12)}` }));
      drawn.push(text(step.text, middle, level, "dim-text", "middle"));
    }
    drawn.push(text("INSIDE", this.x(steps[0].from) - 10, y + 4, "dim-word", "end"));
    drawn.push(text("OUTSIDE", this.x(steps.at(-1).to) + 10, y + 4, "dim-word", "start"));
    return drawn;
  }

  /** Names of layers, one leader each: the inner half to the left, the outer half to the right, none crossing; names lie over all leaders. */
  #layers(section) {
    const layers = this.fixed.layers, half = Math.ceil(layers.length / 2), leaders = [], names = [];
    const [end, way] = section.wall_below ? [this.bottom, 1] : [this.top, -1];
    layers.forEach((layer, at) => {
      const inner = at < half, row = inner ? at : layers.length - 1 - at;
      const x = this.x((layer.from + layer.to) / 2), y = end + way * (14 + row * ROW);
      const wide = wideIs(layer.name);
      if (this.isNarrow) {
        const near = inner ? Math.min(wide, x) : Math.max(this.width - wide, x);
        leaders.push(svg("path", { class: "leader", d: `M${x} ${end - way * 10}V${y - 6}H${near}` }));
        names.push(text(layer.name, inner ? 4 : this.width - 4, y + 6, "layer-name", inner ? "start" : "end"));
        return;
      }
      const words = wide + 9;
      const edge = inner ? Math.max(this.x(0) - 14, words) : Math.min(this.x(this.fixed.reach[1]) + 14, this.width - words);
      leaders.push(svg("path", { class: "leader", d: `M${x} ${end - way * 10}V${y}H${edge}` }));
      names.push(text(layer.name, edge + (inner ? -5 : 5), y + 4, "layer-name", inner ? "end" : "start"));
    });
    return [...leaders, ...names];
  }

  // ---- the hand

  #grip() {
    const grip = svg("g", { class: "grip", tabindex: 0, role: "slider", "aria-label": "Window, in the depth of the wall", "aria-orientation": "horizontal" },
      svg("circle", { r: 19 }), svg("path", { d: "M-4 -6l-7 6 7 6M4 -6l7 6-7 6" }));
    grip.addEventListener("pointerdown", (event) => this.#take(event));
    grip.addEventListener("keydown", (event) => this.#key(event));
    return grip;
  }

  #placeGrip(now, section) {
    const frame = section.shapes.filter((shape) => shape.stuff === "frame");
    const ys = frame.flatMap((shape) => shape.points.filter((_, at) => at % 2));
    const middle = ys.length ? (Math.min(...ys) + Math.max(...ys)) / 2 : 0;
    const depth = (now.frames[0][3] + now.frames[0][4]) / 2;
    setAttribute(this.grip, "transform", `translate(${this.x(depth).toFixed(2)} ${this.y(middle).toFixed(2)})`);
    setAttribute(this.grip, "aria-valuemin", String(this.fixed.places[0].plane));
    setAttribute(this.grip, "aria-valuemax", String(this.fixed.places.at(-1).plane));
    setAttribute(this.grip, "aria-valuenow", String(now.plane));
    const said = now.figures.slice(0, 2).map((one) => `${one.name} ${one.text}`).join(", ");
    setAttribute(this.grip, "aria-valuetext", `${said}${now.named ? `, ${now.named}` : ""}`);
    setAttribute(this.grip, "aria-disabled", String(this.fixed.measured));
    if (this.fixed.measured) this.grip.setAttribute("opacity", ".35"); else this.grip.removeAttribute("opacity");
  }

  #take(event) {
    if (event.button || !this.moves.start()) return;
    event.preventDefault();
    this.grip.focus({ preventScroll: true });
    const zoom = this.width / this.root.getBoundingClientRect().width;
    const start = { x: event.clientX, plane: this.now.plane }, reach = 9 * zoom / this.scale;
    this.box.classList.add("held");
    const move = (moved) => {
      const latest = moved.getCoalescedEvents?.().at(-1) || moved;
      this.moves.to(start.plane + (latest.clientX - start.x) * zoom / this.scale, reach);
    };
    const end = (last) => {
      window.removeEventListener("pointermove", move);
      window.removeEventListener("pointerup", end);
      window.removeEventListener("pointercancel", end);
      this.box.classList.remove("held");
      this.moves.end(last.type === "pointerup");
    };
    window.addEventListener("pointermove", move);
    window.addEventListener("pointerup", end);
    window.addEventListener("pointercancel", end);
  }

  #key(event) {
    const act = {
      ArrowLeft: () => this.moves.step(-1), ArrowRight: () => this.moves.step(1), ArrowDown: () => this.moves.step(-1), ArrowUp: () => this.moves.step(1),
      PageDown: () => this.moves.named(-1), PageUp: () => this.moves.named(1), Home: () => this.moves.named(-Infinity), End: () => this.moves.named(Infinity),
      Escape: () => this.moves.end(false),
    }[event.key];
    if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act();
  }
}

/** How much larger letters are than the 16 px that sizes here go by: on a large screen, or where somebody asks for it. */
const largerLetters = () => parseFloat(getComputedStyle(document.documentElement).fontSize) / 16;

const ruler = document.createElement("canvas").getContext("2d");

/** How wide the name of a layer is written. */
function wideIs(words) {
  ruler.font = LAYER_LETTERS;
  return ruler.measureText(words).width;
}

const tick = (x, y) => `M${x - 4} ${y + 4}L${x + 4} ${y - 4}M${x} ${y - 6}V${y + 6}`;

export function text(words, x, y, kind, anchor) {
  const made = svg("text", { x: x.toFixed(2), y: y.toFixed(2), class: kind, "text-anchor": anchor });
  setText(made, words);
  return made;
}

function clamp(x, width, words) {
  const half = words.length * 3.9;
  return Math.min(Math.max(x, half + 4), width - half - 4);
}
