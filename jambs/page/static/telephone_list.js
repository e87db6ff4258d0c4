// The list of openings: finds one by mark or room, sends what waits, reads the code of a paper from a photo.

import { photoSender } from "/static/telephone_photos.js";
import { askBoxes, box } from "/static/telephone_asks.js";
import { FOR_A_CODE, NotSent, smaller } from "/static/telephone_shrink.js";
import { sender } from "/static/telephone_queue.js";
import { carefulWay } from "/static/telephone_way.js";

const network = document.getElementById("network");
const find = document.getElementById("find");
const none = document.getElementById("none");
const rows = [...document.querySelectorAll("#openings a")];

function say(words) {
  network.textContent = words;
  network.hidden = !words;
}

const send = sender((told) => {
  if (told.network !== undefined) say(told.network);
  if (told.asks) document.getElementById("asks").replaceChildren(...askBoxes(told.asks, () => send()));
});

const photos = new Map();
const sendPhotos = photoSender((mark, said, isThere, leaveOut) => {
  photos.delete(mark);
  if (!isThere) photos.set(mark, box(`Photo of ${mark}: ${said}`, ["Leave it out", () => { leaveOut(); photos.delete(mark); showPhotos(); }]));
  showPhotos();
});

function showPhotos() {
  document.getElementById("photos").replaceChildren(...photos.values());
}

send();
sendPhotos();
carefulWay(rows, say);

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
  const said = document.getElementById("said"), way = document.getElementById("way");
  const [picture] = event.target.files;
  if (!picture) return;
  said.textContent = "The code is being read …";
  try {
    const answer = await fetch("/telephone/code", { method: "POST", body: await smaller(picture, FOR_A_CODE) });
    const found = await answer.json();
    if (answer.ok && !found.said) location.assign(found.path);
    else said.textContent = found.said;
    way.hidden = !found.path;
    way.href = found.path ?? "";
    way.textContent = `Go to ${found.mark}`;
  } catch (error) {
    said.textContent = error instanceof NotSent ? error.message : "No network: find the opening in the list by its mark.";
  }
  event.target.value = "";
});
