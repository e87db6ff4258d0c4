// The list of openings: finds one by mark or room, sends what waits, reads the code of a paper from a photo.

import { photoSender } from "/static/telephone_photos.js";
import { sender } from "/static/telephone_queue.js";

const network = document.getElementById("network");
const find = document.getElementById("find");
const none = document.getElementById("none");
const rows = [...document.querySelectorAll("#openings a")];

sender((told) => {
  if (told.asks?.length) {
    network.textContent = `Readings have a question: ${[...new Set(told.asks.map((one) => one.mark))].join(", ")}`;
    network.hidden = false;
  } else if (told.network !== undefined) {
    network.textContent = told.network;
    network.hidden = !told.network;
  }
})();

photoSender(() => {})();

const by = document.getElementById("by");
by.value = localStorage.getItem("jambs-by") ?? "";
by.addEventListener("input", () => localStorage.setItem("jambs-by", by.value));

find.addEventListener("input", () => {
  const wanted = find.value.trim().toLowerCase();
  let left = 0;
  for (const row of rows) {
    row.parentElement.hidden = !row.dataset.find.includes(wanted);
    left += row.parentElement.hidden ? 0 : 1;
  }
  none.hidden = left > 0;
});

document.getElementById("picture").addEventListener("change", async (event) => {
  const said = document.getElementById("said");
  const [picture] = event.target.files;
  if (!picture) return;
  said.textContent = "The code is being read …";
  try {
    const answer = await fetch("/telephone/code", { method: "POST", body: picture });
    const found = await answer.json();
    if (answer.ok) location.assign(found.path);
    else said.textContent = found.said;
  } catch {
    said.textContent = "No network: find the opening in the list by its mark.";
  }
  event.target.value = "";
});
