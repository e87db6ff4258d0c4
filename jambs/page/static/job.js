// The job as fields. A field is written when it is left; what is wrong with it stands beside it, as the command line says it.

import { byId, draftChanged, el, goesFirst, ofView, say, setText, svg } from "/static/page.js";
import { addHatches } from "/static/hatches.js";
import { between, mover } from "/static/shifts.js";
import { isBusy, movedKey, underHand } from "/static/under_hand.js";
import { picture } from "/static/views.js";
import { wallPicture } from "/static/wall_picture.js";

const { ask, hear } = ofView();
const RENAMED = ["walls", "windows", "interior_trim", "exterior_trim"];
const OPEN = 2;  // so many groups of a section stand open at first
let record = JSON.parse(byId("record").textContent);
const tables = JSON.parse(byId("tables").textContent);  // what may stand under each key
let [section, markWanted] = place();
const opened = new Map();
const wanted = new Set();  // keys that were asked for and have no value yet, by their path: their fields stay
const begun = new Set();  // boxes of what is being added: each stays as it is until the program has it
const typedIn = new Map();  // what else is typed in before anything is there, by what it is of: the same however often all is drawn
const asks = [];  // what is on its way to the program, one after the other
const SHIFTING = ["remove", "copy", "move", "insert"];
const AGAIN = 150;
const stays = (path) => path;
let waiting = Promise.resolve(), isShifting = false, later = 0;
let isDrawn = false;  // while fields give way to new ones: a field that goes is not one that was left

/** The section that the address names, and the opening within it. */
function place() {
  const [key, ...mark] = location.hash.slice(1).split("/").map(decodeURIComponent);
  return [key || "walls", mark.join("/")];
}

/** Open the fields of the opening that the address names; one that stands in a schedule has none here. */
function bringMark() {
  const one = record.sections.find((each) => each.key === section)?.groups.find((each) => each.marks?.includes(markWanted));
  if (!one) return;
  const key = JSON.stringify(one.path);
  opened.set(key, true);
  show();
  const summary = document.querySelector(`[data-group='${CSS.escape(key)}'] > summary`);
  summary.scrollIntoView({ block: "start" });
  summary.focus();
}

function show(moved = stays, heard = "") {
  clearTimeout(later);
  later = 0;
  if (isBusy()) { later = setTimeout(show, AGAIN, moved, heard); return; }
  const putBack = underHand(byId("fields"), moved, heard);
  byId("materials").replaceChildren(...(record.materials || []).map((name) => el("option", { value: name })));
  byId("wrong").replaceChildren(...record.wrong.map((sentence) => el("li", {}, el("span", {}, el("span", { class: "state stop" }, "to settle")), el("span", {}, sentence))));
  if (!record.sections.length) return;
  const known = record.sections.map((one) => one.key);
  if (!known.includes(section) && section !== "job") section = known[0];
  const tab = (key, title, wrong) => el("a", { href: `#${key}`, "aria-current": key === section ? "true" : null }, title, wrong ? el("span", { class: "state stop" }, String(wrong)) : null);
  const one = record.sections.find((each) => each.key === section);
  isDrawn = true;
  byId("sections").replaceChildren(tab("job", "Job", count(record.top)), ...record.sections.map((one) => tab(one.key, one.title, counted(one))));
  byId("fields").replaceChildren(...(one ? whole(one) : [el("h2", {}, "Job"), top()]));
  isDrawn = false;
  putBack();
}

const count = (fields) => fields.reduce((sum, one) => sum + one.wrong.length, 0);
const counted = (one) => (one.wrong?.length || 0) + count(one.fields || []) + (one.groups || []).reduce((sum, each) => sum + counted(each), 0);

function whole(one) {
  const last = one.can_copy && one.groups.at(-1);
  return [el("h2", {}, one.title), el("p", { class: "soft" }, plain(one.words)), ...complaints(one.wrong), ...one.fields.map(field),
    ...one.groups.map((each, at) => group(each, 0, one, at)), last ? act("Add one like", "copy", last.path, last.title, `Add one like ${last.title}`) : null].filter(Boolean);
}

function top() {
  const more = { title: "the job", path: [], more: record.more };
  return el("div", { class: "group" }, el("div", { class: "row" }, ...record.top.map(field), ...missing(more)), el("div", { class: "acts" }, adder(more)));
}

function group(one, depth, above, at) {
  const key = JSON.stringify(one.path), wrong = counted(one);
  const isOpen = opened.get(key) ?? (depth > 0 || above.groups.length <= OPEN || wrong > 0);
  const name = one.title || above.title;
  const trim = depth === 0 && record.trims?.[one.path[0]]?.[name];
  const box = el("details", { class: `group depth${depth}`, open: isOpen, "data-group": key }, el("summary", {}, trim ? el("span", { class: "trimpicture" }, picture(trim)) : null, plain(name), wrong ? el("span", { class: "state stop" }, `${wrong} to settle`) : null));
  box.addEventListener("toggle", () => opened.set(key, box.open));
  box.append(...complaints(one.wrong));
  if (record.walls?.[name] && one.path[0] === "walls" && depth === 0) box.append(wallPicture(record.walls[name], name, moverOf(one, record.walls[name])));
  box.append(el("div", { class: "row" }, ...one.fields.map(field), ...missing(one)));
  if (one.path.at(-1) === "layers") box.append(layers(one));
  else box.append(...one.groups.map((each, place) => group(each, depth + 1, one, place)));
  box.append(el("div", { class: "acts" }, adder(one), ...(depth === 0 && above.can_copy && RENAMED.includes(one.path[0]) ? [renamer(one, name)] : []), ...(depth === 0 && above.can_copy ? [act("Copy", "copy", one.path, name), act("Remove", "remove", one.path, name)] : []),
    ...(isSpared(one, depth, above) ? [act("Remove", "remove", one.path, name)] : []),
    ...(above.is_list ? [act("Remove", "remove", one.path, `${above.title} ${at + 1}`), act("Copy", "copy", one.path, `${above.title} ${at + 1}`)] : [])));
  return box;
}

/** What can be done without: keys that were added under others, and a section that no job needs. */
function isSpared(one, depth, above) {
  const isKey = typeof one.path.at(-1) === "string" && one.path.at(-1) !== "layers";
  return isKey && !above.can_copy && !above.is_list && (depth > 0 || above.can_remove);
}

/** Fields of keys that are not there: those that must be, those that were asked for, and those being added. */
const missing = (one) => [...(one.more || []).filter((key) => isShown(key, one)).map((key) => fresh(key, { path: one.path }, [])), ...beingAdded(one)];

function beingAdded(one) {
  const keys = (one.more || []).map((key) => keyOf(one, key)), here = keyOf(one, { key: "" });
  for (const box of begun) if (isIn(box.keyNow(), here) && !keys.includes(box.keyNow())) begun.delete(box);  // the program has it
  return keys.map(begunAt).filter(Boolean);
}

const begunAt = (key) => [...begun].find((box) => box.keyNow() === key);
const keyOf = (one, key) => JSON.stringify([...one.path, key.key]);
const isIn = (key, here) => JSON.stringify([...JSON.parse(key).slice(0, -1), ""]) === here;

function isShown(key, one) {
  const isLike = one.fields?.some((each) => each.key === "like");  // it has them from another
  return !key.of && ((key.is_required && !isLike) || wanted.has(keyOf(one, key)));
}

function act(words, what, path, name, shown = words) {
  const button = el("button", { type: "button", class: "small", "aria-label": `${words} ${plain(name)}` }, shown);
  button.addEventListener("click", () => change({ act: what, path }));
  return button;
}

/** Another name, everywhere it is said: the field appears where the button was. */
function renamer(one, name) {
  const key = JSON.stringify(["rename", ...one.path]), button = el("button", { type: "button", class: "small", "aria-label": `Rename ${name}` }, "Rename");
  button.addEventListener("click", () => {
    const input = el("input", { type: "text", class: "small", value: name, "aria-label": `New name of ${name}`, autocomplete: "off", spellcheck: "false" });
    const done = (is) => {
      typedIn.delete(key);
      if (is && input.value.trim() && input.value.trim() !== name) change({ act: "rename", path: one.path, name: input.value.trim() });
      else { input.replaceWith(button); button.focus(); }
    };
    input.addEventListener("keydown", (event) => { if (event.key === "Enter") done(true); if (event.key === "Escape") done(false); });
    typedIn.set(key, input);
    button.replaceWith(input);
    input.select();
    input.focus();
  });
  return typedIn.get(key) || button;
}

function adder(one) {
  const rest = (one.more || []).filter((key) => !isShown(key, one) && !begunAt(keyOf(one, key)));
  if (!rest.length) return null;
  const choose = el("select", { "aria-label": `Add to ${one.title || "this"}` }, el("option", { value: "" }, "add …"), ...rest.map((each) => el("option", { value: each.key, title: plain(each.words) }, plain(each.key))));
  choose.addEventListener("change", () => {
    const key = one.more.find((each) => each.key === choose.value), made = fresh(key, { path: one.path }, []);
    if (!key.of) wanted.add(keyOf(one, key));
    choose.closest(".layer, .group").querySelector(".row").append(made);
    made.querySelector("input, select").focus();
    choose.value = "";
    if (key.of) [...choose.options].find((each) => each.value === key.key).remove();
  });
  return choose;
}

/** A key that is not there yet: a field for its value; or the fields of what stands under it, of which one suffices. */
function fresh(key, spot, above, beside = []) {
  const { path } = spot, under = [...above, key.key], names = path[0] === "openings" && ![...path, ...above].includes("trim_with") ? record.names[key.key] : [];  // there a wall is a length
  const own = () => field({ path: [...path, ...under], key: key.key, value: "", words: key.words, picture: key.picture, choices: names?.length ? names : key.choices, wrong: [], add: { spot, under, beside } });
  if (!key.of) return own();
  const name = key.steps.includes("") ? el("input", { type: "text", autocomplete: "off", "aria-label": `Name under ${plain(key.key)}`, placeholder: "its name first" }) : null;
  const inner = [...under, ...key.steps.map((step) => step === "" ? name : step)], keys = tables[key.of];
  const plainKeys = keys.filter((one) => !one.of || one.takes_text), others = plainKeys.filter((one) => !one.of).map((one) => one.key);
  const row = el("div", { class: "row" }, ...(key.takes_text ? [own()] : []), ...plainKeys.map((one) => fresh({ ...one, of: "" }, spot, inner, others)));
  const deeper = keys.filter((one) => one.of);
  const choose = deeper.length ? el("select", { "aria-label": `Add to ${plain(key.key)}` }, el("option", { value: "" }, "add …"), ...deeper.map((one) => el("option", { value: one.key, title: plain(one.words) }, plain(one.key)))) : null;
  choose?.addEventListener("change", () => {
    row.append(fresh(deeper.find((one) => one.key === choose.value), spot, inner));
    choose.selectedOptions[0].remove();
    choose.value = "";
  });
  const box = el("details", { class: "group fresh", open: true }, el("summary", {}, plain(key.key)), el("p", { class: "soft" }, plain(key.words)), name, row, el("div", { class: "acts" }, choose, leaveOut(key, () => box)));
  begun.add(Object.assign(box, { spot, keyNow: () => keyAt([...spot.path, ...under]) }));
  return box;
}

/** A path as it is now: a name that is being typed is a step of it. */
const keyAt = (path) => JSON.stringify(path.map((step) => step.value?.trim() ?? step));

/** What was begun and is not wanted after all. */
function leaveOut(key, boxNow) {
  const button = el("button", { type: "button", class: "small", "aria-label": `Remove ${plain(key.key)}` }, "Remove");
  button.addEventListener("click", () => {
    const box = boxNow(), choose = box.parentElement.closest(".layer, .group").querySelector(":scope > .acts > select, :scope > select");
    begun.delete(box);
    if (box.parentElement.closest(".fresh")) choose?.append(el("option", { value: key.key, title: plain(key.words) }, plain(key.key)));
    box.remove();
    choose?.focus();
    show();
  });
  return button;
}

// ---- one value

function field(one) {
  const pathNow = () => keyAt(one.add ? [...one.add.spot.path, ...one.add.under] : one.path), path = pathNow(), id = `f${path.replace(/[^\w]+/g, "-")}`, told = `${id}-told`;
  const attributes = { id, "data-path": path, "aria-describedby": told, "aria-invalid": one.wrong.length ? "true" : null, "data-new": Boolean(one.add) };
  const input = one.choices.length ? el("select", attributes, ...unlisted(one).map((choice) => el("option", { value: choice, selected: choice === one.value }, choice || "–")))
    : el("input", { ...attributes, type: "text", value: one.value, autocomplete: "off", spellcheck: "false", list: one.key === "material" ? "materials" : null });
  input.pathNow = pathNow;
  input.value = onItsWay(path) ?? one.value;
  const leave = () => {
    const value = input.value.trim();
    if (isDrawn || value === input.waits || value === (onItsWay(pathNow()) ?? one.value)) return;
    put(one, value, input);  // what is not heard goes out again when the field is left once more
  };
  for (const event of ["change", "blur"]) input.addEventListener(event, leave);  // what was put back is no change to the browser
  input.addEventListener("focus", () => { explain(one); comeOut(input); });
  input.addEventListener("keydown", (event) => { if (event.key === "Enter") leave(); });
  return el("div", { class: "field" }, el("label", { for: id }, plain(one.key)), input, el("p", { class: "told", id: told }, ...complaints(one.wrong), el("span", { class: "soft" }, plain(one.words))));
}

/** Keys of the job file, here and in what is said of them, as words. */
const plain = (words) => words.replaceAll("_", " ");

const unlisted = (one) => one.choices.includes(one.value) ? one.choices : [one.value, ...one.choices];

function put(one, value, input) {
  if (!one.add) { change({ act: "set", path: one.path, value }); return; }
  const { spot, beside } = one.add, under = one.add.under.map((step) => step.value?.trim() ?? step), nameless = one.add.under.find((step) => step.value?.trim() === "");
  if (nameless) {  // what was typed waits for it; the rest of the box goes out when its fields are drawn
    say("Its name first.", "stop");
    input.waits = value;
    nameless.onchange = nameless.onblur = () => {
      if (!nameless.value.trim()) return;
      input.waits = null;
      input.dispatchEvent(new Event("change"));
    };
    nameless.focus();
    return;
  }
  for (const key of beside) wanted.add(JSON.stringify([...spot.path, ...under.slice(0, -1), key]));  // those beside it stay in sight
  change({ act: "add", path: spot.path, under, value });
}

const complaints = (wrong) => wrong.map((sentence) => el("span", { class: "complaint" }, sentence));

function explain(one) {
  const name = plain(one.key);
  setText(byId("meaning"), one.words ? `${name}: ${plain(one.words)}` : "");
  for (const picture of document.querySelectorAll(".keypicture")) {
    const words = picture.dataset.picture === one.picture ? meant([...picture.querySelectorAll("text")], name) : [];  // “wall” is drawn on two
    picture.classList.toggle("shows", words.length > 0);
    for (const word of picture.querySelectorAll("text")) word.classList.toggle("meant", words.includes(word));
    if (words.length) bringUp(picture, words[0]);
  }
  reachPictures();
}

/** What scrolls is reached by the keyboard. */
function reachPictures() {
  for (const picture of document.querySelectorAll(".keypicture")) {
    if (picture.scrollWidth > picture.clientWidth) picture.tabIndex = 0; else picture.removeAttribute("tabindex");
  }
}

/** The words of a picture that are a name; a long one stands on two lines. */
function meant(words, name) {
  const said = (word) => word?.textContent.trim();
  return words.filter((word, at) => said(word) === name || said(word) === `= ${name}`
    || `${said(word)} ${said(words[at + 1])}` === name || `${said(words[at - 1])} ${said(word)}` === name);
}

/** The picture at the foot of a narrow window must not lie over the field that it is of. */
function comeOut(input) {
  const pictures = document.querySelector(".pictures").getBoundingClientRect(), seen = input.getBoundingClientRect();
  if (pictures.height && seen.bottom > pictures.top && seen.left < pictures.right && seen.right > pictures.left) input.scrollIntoView({ block: "nearest" });
}

/** Within its own box, so that the fields stay where they are under the hand. */
function bringUp(picture, word) {
  const box = picture.parentElement, seen = word.getBoundingClientRect(), frame = picture.getBoundingClientRect();
  box.scrollTop += frame.top - box.getBoundingClientRect().top;
  picture.scrollLeft += seen.left + seen.width / 2 - frame.left - frame.width / 2;
}

// ---- layers

function layers(one) {
  const list = el("ol", { class: "layers", "aria-label": "Layers, inside to outside" }, ...one.groups.map((layer, at) => layerRow(layer, at, one)));
  return el("div", {}, list, el("div", { class: "acts" }, layerAdder(one)));
}

/** The one field of a wall that is typed in before anything is there: it is the same one however often the wall is drawn. */
function layerAdder(one) {
  const key = JSON.stringify(["layer", ...one.path]);
  if (typedIn.get(key)?.value) return typedIn.get(key);
  const add = el("input", { type: "text", list: "materials", placeholder: "a layer of the catalog, like plywood 1/2", "aria-label": "Add a layer outside" });
  const leave = async () => {
    const value = add.value.trim();
    if (isDrawn || !value) return;
    const isHeard = change({ act: "insert", path: one.path, at: add.closest(".group").querySelectorAll(".layer").length, value });
    add.value = "";
    if (!await isHeard) typedIn.get(key).value = value;
  };
  for (const event of ["change", "blur"]) add.addEventListener(event, leave);
  add.addEventListener("keydown", (event) => { if (event.key === "Enter") leave(); });
  typedIn.set(key, add);
  return add;
}

function layerRow(layer, at, one) {
  const move = (to) => change({ act: "move", path: layer.path, to });
  const button = (words, says, to) => { const made = el("button", { type: "button", class: "small", "aria-label": `${says}: ${layer.title}`, disabled: to < 0 || to >= one.groups.length }, words); made.addEventListener("click", () => move(to)); return made; };
  const row = el("li", { draggable: "true", class: "layer" }, el("span", { class: "handle", "aria-hidden": "true" }, "⠿"),
    el("div", { class: "row" }, ...layer.fields.map((each) => field(each.key === String(at) ? { ...each, key: "material" } : each)), ...layer.groups.flatMap((inner) => inner.fields.map(field)), ...missing(layer), ...complaints(layer.wrong)), adder(layer),
    button("↑", "Further in", at - 1), button("↓", "Further out", at + 1), act("Remove", "remove", layer.path, layer.title));
  row.addEventListener("dragstart", (event) => { event.dataTransfer.setData("text/plain", String(at)); event.dataTransfer.effectAllowed = "move"; row.classList.add("moved"); });
  row.addEventListener("dragend", () => row.classList.remove("moved"));
  row.addEventListener("dragover", (event) => event.preventDefault());
  row.addEventListener("drop", (event) => {
    event.preventDefault();
    moveLayer(one, Number(event.dataTransfer.getData("text/plain")), at);
  });
  return row;
}

/** What was drawn to a place that another window has changed meanwhile is not the place that was meant. */
function moveLayer(one, from, to) {
  if (later) say("The wall was changed meanwhile: move the layer again.", "stop");
  else if (from !== to) change({ act: "move", path: one.groups[from].path, to });
}

/** How a layer of a wall's picture is moved; nothing where the picture shows others than the fields. */
function moverOf(wall, stack) {
  const one = wall.groups.find((each) => each.path.at(-1) === "layers");
  return one?.groups.length === stack.length ? (from, to) => moveLayer(one, from, to) : null;
}

// ---- to the program and back

const names = (key) => record.sections.find((one) => one.key === key)?.groups.map((each) => each.path.at(-1)) || [];

/** Where a copy stands: behind what it is of, or under the name that was not there before. */
function copyOf(path, before) {
  const at = path.at(-1), isNamed = typeof at === "string";
  return [...path.slice(0, -1), isNamed ? names(path[0]).find((name) => !before.includes(name)) : at + 1];
}

/** The value that a field was left with and the program has not answered yet. */
const onItsWay = (key) => asks.findLast((one) => one.value !== undefined && keyAsked(one) === key)?.value;
const keyAsked = (asked) => JSON.stringify([...asked.path, ...(asked.under || [])]);

/** One after the other, as they were asked for. What shifts numbers of a list is asked for once: until the list is drawn anew, its other buttons are of places that have moved. */
function change(asked) {
  const shifts = SHIFTING.includes(asked.act);
  if (shifts && isShifting) return Promise.resolve(false);
  if (shifts) isShifting = true;
  asks.push(asked);
  waiting = goesFirst(waiting.catch(() => {}).then(() => asked.path && changeNow(asked)).finally(() => { if (shifts) isShifting = false; }));
  return waiting;
}

/** Say whether the program has heard it, and of the place that was meant. */
async function changeNow(asked) {
  const before = names(asked.path[0]), answer = await ask("/job/change", { ...asked, number: record.number }), shown = record.sections;
  asks.splice(asks.indexOf(asked), 1);
  if (!answer.isHeard) { say(answer.said, "stop"); return false; }
  if (answer.sections) record = answer;
  say(answer.said || "", answer.ok ? "" : "stop");
  const heard = answer.moved ? "" : keyAsked(asked);  // what is typed at a place that has moved goes along with it
  const moved = answer.ok ? mover(asked) : answer.moved ? between(shown, record.sections) : stays, made = asked.act === "copy" && answer.ok && JSON.stringify(copyOf(asked.path, before));
  follow(moved);
  if (made) opened.set(made, true);
  show(moved, heard);
  if (made) document.querySelector(`[data-group='${CSS.escape(made)}'] > summary`)?.focus();
  draftChanged();
  return !answer.moved;
}

/** What was asked for and opened meanwhile is of the places as they were. */
function follow(moved) {
  for (const one of asks) one.path = moved(one.path);
  for (const one of asks.filter((each) => !each.path)) asks.splice(asks.indexOf(one), 1);
  for (const spot of new Set([...begun].map((box) => box.spot))) spot.path = moved(spot.path) || spot.path;
  const stillOpen = [...opened].map(([key, is]) => [movedKey(key, moved), is]).filter(([key]) => key);
  opened.clear();
  for (const [key, is] of stillOpen) opened.set(key, is);
}

hear(window, "hashchange", () => { [section, markWanted] = place(); show(); bringMark(); });
hear(window, "resize", reachPictures);  // a telephone that is turned
hear(document, "house", () => { waiting = waiting.catch(() => {}).then(others); });  // in turn: what is on its way is of places as they were

/** What another window changed: what is typed here goes along with its layer or opening. */
async function others() {
  const found = await ask("/job/form");
  if (!found.ok || found.number === record.number) return;
  const moved = between(record.sections, found.sections);
  record = found;
  follow(moved);
  show(moved);
}
addHatches();
show();
bringMark();
