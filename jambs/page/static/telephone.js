// One opening: enters a reading with thumbs, keeps it until it is written down, shows what is answered.
// Nothing is worked out here: a reading goes out as it was typed, and what comes back is shown as it is printed.

import { askBoxes, box, element } from "/static/telephone_asks.js";
import { keepPhoto, photoSender } from "/static/telephone_photos.js";
import { NotSent } from "/static/telephone_shrink.js";
import { needsSomebody, put, sender, waiting } from "/static/telephone_queue.js";
import { carefulWay } from "/static/telephone_way.js";

const $ = (id) => document.getElementById(id);
const opening = $("opening");
const { mark } = opening.dataset;
const isStated = opening.dataset.stated !== "";
const rows = [...document.querySelectorAll(".place-row")];
const likely = document.createElement("div");
let answer = JSON.parse($("first-answer").dataset.answer);
let asked = rows[0];
let typed = { sign: "", whole: "", fraction: "", word: "" };

// ---- what is asked

function own() {
  return waiting().filter((one) => one.mark === mark && !needsSomebody(one));
}

function readAt(place) {
  const kept = own().filter((one) => String(one.place) === place);
  return kept.length ? kept[kept.length - 1].text : (answer.read[place] ?? "");
}

function next() {
  return rows.find((row) => !readAt(row.dataset.place)) ?? rows[0];
}

function groupOf(place) {
  return document.querySelector(`.picture .place[data-place="${place}"]`).dataset.group;
}

function ask(row) {
  asked = row;
  const { place, words, planned, kind, minus } = row.dataset;
  $("asked").textContent = `${place} · ${words}`;
  $("planned").textContent = planned ? `planned ${planned}` : "";
  $("minus").textContent = minus;
  $("minus").hidden = minus === "";
  $("length").hidden = kind !== "";
  $("yes-or-no").hidden = kind === "";
  $("fractions")?.toggleAttribute("hidden", kind !== "");
  likely.replaceChildren(...row.dataset.likely.split(",").filter(Boolean).map(likelyButton));
  likely.hidden = !likely.childElementCount;
  clear();
  show();
}

function likelyButton(fraction) {
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = fraction;
  button.dataset.fraction = fraction;
  button.className = "is-likely";
  return button;
}

/** The place that is asked for is as large on every picture, over the others. */
function enlarge(place) {
  const circle = place.querySelector("circle");
  const [x, y, larger] = [circle.getAttribute("cx"), circle.getAttribute("cy"), place.closest("svg").dataset.larger];
  place.setAttribute("transform", `translate(${x} ${y}) scale(${larger}) translate(${-x} ${-y})`);
  place.parentNode.append(place);
}

function show() {
  const group = groupOf(asked.dataset.place);
  const odd = new Set(answer.questions.map((one) => String(one.place)));
  for (const place of document.querySelectorAll(".picture .place")) {
    place.classList.toggle("is-asked", place.dataset.place === asked.dataset.place);
    place.removeAttribute("transform");
    place.classList.toggle("is-read", readAt(place.dataset.place) !== "");
    place.classList.toggle("is-questioned", odd.has(place.dataset.place));
    place.classList.toggle("is-aside", place.dataset.group !== group);
  }
  enlarge(document.querySelector(".picture .place.is-asked"));
  for (const row of rows) row.querySelector(".read").textContent = readAt(row.dataset.place);
  const now = readAt(asked.dataset.place);
  $("reads").textContent = now ? `reads ${now}` : "";
  $("state").textContent = answer.state;
  $("state").dataset.state = answer.state;
}

// ---- what is typed

function text() {
  if (typed.word) return typed.word;
  const length = [typed.whole, typed.fraction].filter(Boolean).join(" ");
  return length ? typed.sign + length : "";
}

function showTyped() {
  $("entered").textContent = text() || "–";
  $("minus").setAttribute("aria-pressed", String(typed.sign !== ""));
  for (const button of document.querySelectorAll("[data-fraction]"))
    button.classList.toggle("is-chosen", typed.fraction === button.dataset.fraction);
  $("write").disabled = isStated || !text();
}

function clear() {
  typed = { sign: "", whole: "", fraction: "", word: "" };
  showTyped();
}

document.querySelector(".entry").addEventListener("click", (event) => {
  const button = event.target.closest("button");
  if (!button) return;
  const { digit, fraction, word } = button.dataset;
  if (digit && typed.whole.length < 6) typed.whole += digit;
  if (fraction) typed.fraction = typed.fraction === fraction ? "" : fraction;
  if (word) typed.word = word;
  if (button.id === "minus") typed.sign = typed.sign ? "" : "-";
  if (button.id === "clear") clear();
  showTyped();
  if (button.id === "write" && text() && !isStated) write(text(), asked.dataset.place, false);
});

// ---- what goes out, and what comes back

function write(reading, place, sure) {
  const { words } = rows.find((row) => row.dataset.place === place).dataset;
  const units = opening.dataset.metric ? "mm" : "inch";
  const told = { asked: words, units, was: readAt(place), sure, day: $("day").value, by: $("by").value };
  try {
    put({ mark, place: Number(place), text: reading, ...told });
  } catch {
    said("This telephone has no room for a reading: write it on paper, and free some.");
    return;
  }
  $("asks").replaceChildren();
  ask(next());
  send();
}

function said(words) {
  $("network").textContent = words;
  $("network").hidden = !words;
}

const send = sender((told) => {
  if (told.network !== undefined) said(told.network);
  if (told.answer && told.mark === mark) {
    answer = told.answer;
    showAnswer();
    show();
  }
  if (told.asks) showAsks(told.asks);
});

function showAsks(kept) {
  const others = askBoxes(kept, settle, again);
  const odd = answer.questions.map((one) =>
    box(
      one.text,
      ["Measure again", () => ask(rows.find((row) => row.dataset.place === String(one.place)))],
      ["It is right", () => write(answer.read[String(one.place)], String(one.place), true)],
    ),
  );
  $("asks").replaceChildren(...others, ...odd);
  if (others.length || odd.length) $("asks").scrollIntoView({ block: "nearest" });
}

function settle(entry, isMine) {
  if (!isMine && entry.mark === mark) answer.read[String(entry.place)] = entry.there;
  if (entry.changed) location.reload(); // this page asks for places of before
  show();
  send();
}

/** How the place of a reading is asked for once more; nothing where this opening has it no longer, or it is another's. */
function again(entry) {
  const row = entry.mark === mark && rows.find((one) => one.dataset.place === String(entry.place));
  return row && !entry.changed ? () => ask(row) : null;
}

function showAnswer() {
  const table = element("table", "");
  const caption = element("caption", answer.caption);
  table.append(caption);
  for (const board of answer.boards) {
    const line = element("tr", "");
    const name = element("th", board.words);
    name.scope = "row";
    line.append(name);
    for (const end of board.ends) {
      const cell = element("td", "");
      cell.append(element("div", end.width, end.is_read ? "width" : "width is-planned"));
      cell.append(element("div", end.is_read ? end.at : `${end.at}, planned`, "end"));
      line.append(cell);
    }
    table.append(line);
  }
  $("answer").replaceChildren(table);
  const edges = answer.boards.filter((board) => board.how).map((board) => element("p", `${board.words}: ${board.how}`));
  $("told").replaceChildren(...edges, ...answer.told.map((sentence) => element("p", sentence)));
}

// ---- who, when, and the photo

function today() {
  const now = new Date();
  return [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((one) => String(one).padStart(2, "0")).join("-");
}

$("by").value = localStorage.getItem("jambs-by") ?? "";
$("by").addEventListener("input", () => localStorage.setItem("jambs-by", $("by").value));
$("day").value = today();

const sendPhotos = photoSender((of, said, isThere) => {
  if (of !== mark) return;
  $("said").textContent = said;
  if (!isThere) return;
  $("photo").src = `/telephone/photo/${encodeURIComponent(mark)}?${Date.now()}`;
  $("photo").hidden = false;
});

$("picture").addEventListener("change", async (event) => {
  const [picture] = event.target.files;
  if (!picture) return;
  $("said").textContent = "The photo is on its way …";
  try {
    await keepPhoto(mark, picture);
    sendPhotos();
  } catch (error) {
    const full = "This telephone has no room for the photo: free some, and take it again.";
    $("said").textContent = error instanceof NotSent ? error.message : full;
  }
  event.target.value = "";
});

carefulWay([document.querySelector("a.back")], said);
for (const row of rows) row.addEventListener("click", () => { ask(row); opening.scrollIntoView(); });
likely.className = "fractions";
likely.id = "likely";
$("write").before(likely);
ask(isStated ? rows[0] : next());
showAnswer();
send();
sendPhotos();
