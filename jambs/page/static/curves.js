// Under the section, on the same scale: how far each limit lets the flange go, and the curves of heat with their limits.

import { setAttribute, setText, svg } from "/static/page.js";
import { text } from "/static/section.js";

const ROW = 19;
const HIGH = 78;
const ASK_AGAIN = 700;

export class CurvesPicture {
  constructor(box, section) {
    this.section = section;
    this.heat = null;
    this.root = svg("svg", { role: "img", "aria-label": "Limits of the flange plane, and heat" });
    this.said = document.createElement("p");
    this.said.className = "soft curves-said";
    box.append(this.root, this.said);
  }

  async ask(mark, whenFound) {
    const answer = await (await fetch(`/openings/${encodeURIComponent(mark)}/heat`)).json();
    if (answer.working) { setText(this.said, answer.said); setTimeout(() => this.ask(mark, whenFound), ASK_AGAIN); return; }
    setText(this.said, answer.said || "");
    if (answer.curves) { this.heat = answer; if (this.now) this.draw(this.now, this.fixed); }
    if (answer.curves?.length) whenFound();
  }

  draw(now, fixed) {
    [this.now, this.fixed] = [now, fixed];
    const s = this.section, rows = now.limits, drawn = [];
    let y = 12;
    for (const limit of rows) { drawn.push(...this.#limit(limit, y)); y += ROW; }
    const bars = y;
    y += 10;
    for (const curve of this.heat?.curves || []) { drawn.push(...this.#curve(curve, y, now.plane)); y += HIGH; }
    const x = s.x(now.chains.flange);
    drawn.push(svg("path", { class: "now", d: `M${x} 2V${Math.max(y - 14, bars)}` }));
    setAttribute(this.root, "viewBox", `0 0 ${s.width} ${y + 4}`);
    this.root.replaceChildren(...drawn);
    const missed = rows.filter((one) => one.miss).map((one) => `${one.name} ${one.miss}`);
    setAttribute(this.root, "aria-label", missed.length ? `Limits: ${missed.join("; ")}` : "No limit of the flange plane is missed");
  }

  #limit(limit, y) {
    const s = this.section, [low, high] = [this.fixed.places[0].plane, this.fixed.places.at(-1).plane];
    const [a, b] = [s.x(Math.max(limit.low ?? low, low)), s.x(Math.min(limit.high ?? high, high))];
    const missed = limit.miss ? " missed" : "";
    const name = svg("text", { x: s.x(low) - 8, y: y + 4, class: `bar-name${missed}`, "text-anchor": "end" }, limit.name);
    return [svg("rect", { class: `bar${missed}`, x: a, y: y - 5, width: Math.max(b - a, 1), height: 10 }), name,
      ...(limit.miss ? [text(limit.miss, s.x(high) + 14, y + 4, "bar-miss", "start")] : [])];
  }

  #curve(curve, top, plane) {
    const s = this.section, foot = top + HIGH - 14, [low, high] = curve.range;
    const y = (value) => foot - (value - low) / (high - low) * (HIGH - 34);
    const line = (values) => values.map(([at, value], n) => `${n ? "L" : "M"}${s.x(at).toFixed(1)} ${y(value).toFixed(1)}`).join("");
    const band = curve.points.map(([at, , from]) => [at, from]).concat(curve.points.map(([at, , , to]) => [at, to]).reverse());
    const now = nearest(curve.points, plane);
    return [
      text(curve.name, s.x(this.fixed.places[0].plane) - 8, top + 14, "curve-name", "end"),
      svg("path", { class: "curve-band", d: `${line(band)}Z` }), svg("path", { class: "curve", d: line(curve.points) }),
      ...(now ? [svg("circle", { class: "curve-dot", r: 5, cx: s.x(plane), cy: y(now.value) }), text(now.text, s.x(this.fixed.places.at(-1).plane) + 14, y(now.value) + 5, "curve-value", "start")] : []),
    ];
  }
}

/** The point that was sent for this step of the shop's grid; no figure is made up here. */
function nearest(points, plane) {
  let found = null;
  for (const point of points) if (!found || Math.abs(point[0] - plane) < Math.abs(found[0] - plane)) found = point;
  return found && { value: found[1], text: found[4] };
}
