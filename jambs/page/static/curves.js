// Under the section, on the same scale: how far each limit lets the flange go, and the curves of heat with their limits.

import { ofView, setAttribute, setText, svg } from "/static/page.js";
import { text } from "/static/section.js";

const ROW = 19;
const NAME = 15;  // of a line of its own, where there is no room beside the bars
const EDGE = 4;
const HIGH = 78;
const ASK_AGAIN = 700;

export class CurvesPicture {
  constructor(box, section) {
    this.section = section;
    this.heat = null;
    this.view = ofView();
    this.root = svg("svg", { role: "img", "aria-label": "Limits of the flange plane, and heat" });
    this.said = document.createElement("p");
    this.said.className = "soft curves-said";
    box.append(this.root, this.said);
  }

  async ask(mark, whenFound) {
    const answer = await this.view.ask(`/openings/${encodeURIComponent(mark)}/heat`);
    if (answer.working) { setText(this.said, answer.said); setTimeout(() => this.ask(mark, whenFound), ASK_AGAIN); return; }
    setText(this.said, answer.said || "");
    if (answer.curves) { this.heat = answer; if (this.now) this.draw(this.now, this.fixed); }
    if (answer.curves?.length) whenFound();
  }

  draw(now, fixed) {
    [this.now, this.fixed] = [now, fixed];
    const s = this.section, rows = now.limits, drawn = [];
    let y = 12;
    for (const limit of rows) { if (s.isNarrow) y += NAME; drawn.push(...this.#limit(limit, y)); y += ROW; }
    const bars = y;
    y += 10;
    for (const curve of this.heat?.curves || []) { drawn.push(...this.#curve(curve, y, now.plane)); y += HIGH; }
    const x = s.x(now.chains.flange);
    const words = drawn.filter((one) => one.matches("text")), line = svg("path", { class: "now", d: `M${x} 2V${Math.max(y - 14, bars)}` });
    setAttribute(this.root, "viewBox", `0 0 ${s.width} ${y + 4}`);
    this.root.replaceChildren(...drawn.filter((one) => !words.includes(one)), line, ...words);  // a name that the line meets can be read
    const missed = rows.filter((one) => one.miss).map((one) => `${one.name} ${one.miss}`);
    setAttribute(this.root, "aria-label", missed.length ? `Limits: ${missed.join("; ")}` : "No limit of the flange plane is missed");
  }

  #limit(limit, y) {
    const s = this.section, [low, high] = [this.fixed.places[0].plane, this.fixed.places.at(-1).plane];
    const [a, b] = [s.x(Math.max(limit.low ?? low, low)), s.x(Math.min(limit.high ?? high, high))];
    const missed = limit.miss ? " missed" : "";
    const bar = svg("rect", { class: `bar${missed}`, x: a, y: y - 5, width: Math.max(b - a, 1), height: 10 });
    return [bar, this.#before(limit.name, low, y + 4, `bar-name${missed}`), ...(limit.miss ? [this.#after(limit.miss, high, y + 4, "bar-miss")] : [])];
  }

  /** A name inside of all planes, a value outside of them; over them at the edges, where there is no room beside. */
  #before(words, low, y, kind) {
    const s = this.section;
    return s.isNarrow ? text(words, EDGE, y - NAME, kind, "start") : text(words, s.x(low) - 8, y, kind, "end");
  }

  #after(words, high, y, kind, over = y) {
    const s = this.section;
    return s.isNarrow ? text(words, s.width - EDGE, over - NAME, kind, "end") : text(words, s.x(high) + 14, y, kind, "start");
  }

  #curve(curve, top, plane) {
    const s = this.section, foot = top + HIGH - 14, [low, high] = curve.range, name = top + 14 + (s.isNarrow ? NAME : 0);
    const y = (value) => foot - (high > low ? (value - low) / (high - low) : .5) * (HIGH - 34);  // one point alone: halfway up
    const line = (values) => values.map(([at, value], n) => `${n ? "L" : "M"}${s.x(at).toFixed(1)} ${y(value).toFixed(1)}`).join("");
    const band = curve.points.map(([at, , from]) => [at, from]).concat(curve.points.map(([at, , , to]) => [at, to]).reverse());
    const now = nearest(curve.points, plane, this.fixed.step);
    return [
      this.#before(curve.name, this.fixed.places[0].plane, name, "curve-name"),
      svg("path", { class: "curve-band", d: `${line(band)}Z` }), svg("path", { class: "curve", d: line(curve.points) }),
      ...(now ? [svg("circle", { class: "curve-dot", r: 5, cx: s.x(plane), cy: y(now.value) }), this.#after(now.text, this.fixed.places.at(-1).plane, y(now.value) + 5, "curve-value", name)] : []),
    ];
  }
}

/** The point that was sent for this step of the shop's grid; no figure is made up here, nor said where none was worked out. */
function nearest(points, plane, step) {
  let found = null;
  for (const point of points) if (!found || Math.abs(point[0] - plane) < Math.abs(found[0] - plane)) found = point;
  return found && Math.abs(found[0] - plane) <= step && { value: found[1], text: found[4] };
}
