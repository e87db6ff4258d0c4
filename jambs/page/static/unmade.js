// An opening that cannot be built: as soon as the house is another one, it is looked at anew.

import { ofView } from "/static/page.js";
import { lookAgain } from "/static/within.js";

const { hear } = ofView();
hear(document, "house", lookAgain);
hear(document, "keydown", (event) => {
  if (event.target !== document.body || event.ctrlKey || event.metaKey) return;
  document.querySelector({ "[": "[rel=prev]", "]": "[rel=next]" }[event.key] || "none")?.click();
});
