// The parts in space: flat faces that are sent, turned and drawn from the farthest to the nearest.

import { svg } from "/static/page.js";

const KEY_STEP = 0.12;
const ROOM = 0.98;  // of the picture, so that no corner leaves it however it is turned
const MANY = 30;  // faces of one part: it is bent or molded, and the lines between its strips are drawn faint

export class SpacePicture {
  constructor(box) {
    this.box = box;
    this.turn = -0.62;
    this.tilt = 0.34;
    this.root = svg("svg", { viewBox: "-100 -100 200 200", role: "img", tabindex: 0, "aria-label": "The parts of the opening in space; arrow keys turn them" });
    box.append(this.root);
    box.addEventListener("pointerdown", (event) => this.#take(event));
    this.root.addEventListener("keydown", (event) => this.#key(event));
  }

  show(parts, frames) {
    const faces = parts.flatMap((part) => part.faces.map((points) => ({ kind: part.faces.length > MANY ? `${part.where} fine` : part.where, points, mark: part.mark })));
    this.faces = [...faces, ...frames.flatMap(boxFaces)].map((face) => ({ ...face, corners: corners(face.points) }));
    const all = this.faces.flatMap((face) => face.corners);
    this.middle = [0, 1, 2].map((axis) => (least(all, axis) + most(all, axis)) / 2);
    this.size = Math.max(...all.map((point) => Math.hypot(...point.map((value, axis) => value - this.middle[axis]))));
    this.draw();
  }

  draw() {
    if (!this.faces) return;
    const seen = this.faces.map((face) => ({ ...face, at: face.corners.map((point) => this.#project(point)) }))
      .filter((face) => area(face.at) > 0)
      .map((face) => ({ ...face, far: face.at.reduce((sum, point) => sum + point[2], 0) / face.at.length }))
      .sort((one, two) => one.far - two.far);
    this.root.replaceChildren(...seen.map((face) =>
      svg("path", { class: `face ${face.kind}`, d: `M${face.at.map((point) => `${point[0].toFixed(1)} ${point[1].toFixed(1)}`).join("L")}Z` })));
  }

  /** Seen from the room: x right, y up on the screen; what is nearer to the eye has the greater third number. */
  #project(point) {
    const [x, y, d] = point.map((value, axis) => value - this.middle[axis]);
    const [c, s] = [Math.cos(this.turn), Math.sin(this.turn)], [ct, st] = [Math.cos(this.tilt), Math.sin(this.tilt)];
    const across = x * c + d * s, depth = d * c - x * s;
    const up = y * ct + depth * st, away = depth * ct - y * st;
    const factor = 100 * ROOM / this.size;
    return [across * factor, -up * factor, -away * factor];
  }

  #take(event) {
    const start = { x: event.clientX, y: event.clientY, turn: this.turn, tilt: this.tilt };
    this.box.setPointerCapture(event.pointerId);
    const move = (moved) => {
      this.turn = start.turn - (moved.clientX - start.x) / 120;
      this.tilt = Math.min(Math.max(start.tilt + (moved.clientY - start.y) / 150, -1.4), 1.4);
      this.draw();
    };
    const end = () => { this.box.removeEventListener("pointermove", move); };
    this.box.addEventListener("pointermove", move);
    this.box.addEventListener("pointerup", end, { once: true });
    this.box.addEventListener("pointercancel", end, { once: true });
  }

  #key(event) {
    const [turn, tilt] = { ArrowLeft: [1, 0], ArrowRight: [-1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key] || [0, 0];
    if (!turn && !tilt) return;
    event.preventDefault();
    this.turn += turn * KEY_STEP;
    this.tilt += tilt * KEY_STEP;
    this.draw();
  }
}

function boxFaces([left, width, height, inner, outer]) {
  const p = (x, y, d) => [left + x, y, d];
  const [a, b, c, d] = [p(0, 0, inner), p(width, 0, inner), p(width, height, inner), p(0, height, inner)];
  const [e, f, g, h] = [p(0, 0, outer), p(width, 0, outer), p(width, height, outer), p(0, height, outer)];
  const faces = [[d, c, b, a], [e, f, g, h], [a, b, f, e], [b, c, g, f], [c, d, h, g], [d, a, e, h]];
  return faces.map((face) => ({ kind: "window", points: face.flat(), mark: "" }));
}

function corners(points) {
  const found = [];
  for (let at = 0; at < points.length; at += 3) found.push(points.slice(at, at + 3));
  return found;
}

const least = (points, axis) => points.reduce((low, point) => Math.min(low, point[axis]), Infinity);
const most = (points, axis) => points.reduce((high, point) => Math.max(high, point[axis]), -Infinity);

/** Twice the area on the screen, positive for a face that looks at the eye. */
function area(points) {
  let sum = 0;
  points.forEach(([x, y], at) => { const [u, v] = points[(at + 1) % points.length]; sum += x * v - u * y; });
  return -sum;
}
