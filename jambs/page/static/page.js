// What every view uses: elements, requests, what is said. Nothing of the trade is worked out here or anywhere in these modules.

const SVG = "http://www.w3.org/2000/svg";

export function el(name, attributes = {}, ...children) {
  return filled(document.createElement(name), attributes, children);
}

export function svg(name, attributes = {}, ...children) {
  return filled(document.createElementNS(SVG, name), attributes, children);
}

function filled(element, attributes, children) {
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== null && value !== undefined && value !== false) element.setAttribute(key, value === true ? "" : value);
  }
  element.append(...children.filter((child) => child !== null && child !== undefined).map((child) => (typeof child === "string" ? unbroken(child) : child)));
  return element;
}

/** A length is never parted at the end of a line: 5 1/2 read as 5 is a board too short, 902 alone is of no unit. Of pages: answers.py. */
export const unbroken = (text) => text.replace(/(\d) (?=\d+\/\d|(?:mm|cm|m|ft)\b)/g, "$1\u00a0");

export const byId = (id) => document.getElementById(id);

/** Put a text where it changed only, so that nothing blinks and nothing is read out twice. */
export function setText(element, text) {
  const whole = unbroken(text);
  if (element.textContent !== whole) element.textContent = whole;
}

export function setAttribute(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

/** Put other children into a box, where they are others: what is the same stays under the hand, and scrolled as it was. */
export function refill(box, ...children) {
  const next = box.cloneNode(false);
  next.append(...children.filter(Boolean));
  if (next.isEqualNode(box)) return;
  const at = box.contains(document.activeElement) && nameOf(document.activeElement), scrolled = [...box.querySelectorAll(".scroll")].map((one) => one.scrollLeft);
  box.replaceChildren(...next.childNodes);
  box.querySelectorAll(".scroll").forEach((one, n) => { one.scrollLeft = scrolled[n] || 0; });
  if (at) [...box.querySelectorAll("a, button, summary, [tabindex]")].find((one) => nameOf(one) === at)?.focus({ preventScroll: true });
}

const nameOf = (one) => one.getAttribute("aria-label") || one.textContent;

export const GONE = "The program does not answer. Start it again with: jambs open";

const flying = new Set();  // what is on its way to the program, to change something, or waits its turn

/** Let what is saved or taken back wait for something. */
export function goesFirst(going) {
  flying.add(going);
  going.catch(() => {}).then(() => flying.delete(going));
  return going;
}

/** Wait until the program has heard what fields were left with. */
export async function heard() {
  for (;;) {
    await new Promise((done) => setTimeout(done));
    if (!flying.size) return;
    await Promise.allSettled(flying);
  }
}

/** Ask the program; `isHeard`: it has answered as it answers this window. Never fails: what keeps it from answering is `said`. */
export async function ask(path, body) {
  const sent = body === undefined ? {} : { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
  const unheard = (said) => ({ ok: false, isHeard: false, said, wrong: [said] });
  try {
    const going = fetch(path, sent), answer = await (body === undefined ? going : goesFirst(going));
    if (!answer.headers.get("content-type")?.includes("json")) return unheard(sentenceOf(await answer.text()) || GONE);
    return { ok: answer.ok, isHeard: true, ...await answer.json() };
  } catch { return unheard(GONE); }
}

let view = new AbortController();

/** What belongs to the view that is there now: once it is left, it hears nothing any more, and waits for no answer. */
export function ofView() {
  const { signal } = view;
  return {
    signal,
    hear: (target, kind, act) => target.addEventListener(kind, act, { signal }),
    ask: async (path, body) => {
      const answer = signal.aborted ? null : await ask(path, body);
      if (!signal.aborted) return answer;
      if (body !== undefined) draftChanged();
      return new Promise(() => {});
    },
  };
}

export function leaveView() {
  view.abort();
  view = new AbortController();
}

/** What a page says that stands in the place of an answer: this browser has not come in, or something unforeseen. */
const sentenceOf = (page) => new DOMParser().parseFromString(page, "text/html").querySelector("p")?.textContent;

/** Return a function that does one thing after the other, however fast they are asked for. */
export function inTurn(work) {
  let last = Promise.resolve();
  return (...asked) => { last = last.then(() => work(...asked)).catch(() => say(GONE, "stop")); return last; };
}

/** Say a sentence under the strip, and to who listens to the page. */
export function say(sentence, weight = "") {
  const said = byId("said");
  if (!said) return;
  said.dataset.weight = weight;
  setText(said, sentence);
}

export const draftChanged = () => document.dispatchEvent(new CustomEvent("draft"));
