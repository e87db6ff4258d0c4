// The hatches of the papers, as patterns; one set for a page.

import { svg } from "/static/page.js";

const line = (d) => svg("path", { d, class: "p-line" });
const paper = (size, kind) => svg("rect", { width: size, height: size, class: kind });

function pattern(id, size, kind, ...marks) {
  return svg("pattern", { id, width: size, height: size, patternUnits: "userSpaceOnUse" }, paper(size, kind), ...marks);
}

export function hatches() {
  return svg("defs", {},
    pattern("h-gypsum", 9, "p-gypsum", line("M2 2h.8M6.5 4h.8M3.5 7h.8")),
    pattern("h-rigid", 22, "p-foam", line("M0 0L22 22M22 0L0 22")),
    pattern("h-fiber", 16, "p-foam", line("M0 8Q4 0 8 8T16 8")),
    pattern("h-sheet", 6, "p-sheathing", line("M0 6L6 0")),
    pattern("h-lumber", 9, "p-wood", line("M0 9L9 0")),
    pattern("h-trim", 7, "p-wood", line("M0 7L7 0")),
    pattern("h-cross", 7, "p-wood", line("M0 0L7 7")),
  );
}

export function addHatches() {
  if (document.getElementById("h-trim")) return;
  const holder = svg("svg", { width: 0, height: 0, "aria-hidden": "true", focusable: "false", class: "hatches" }, hatches());
  document.body.append(holder);
}
