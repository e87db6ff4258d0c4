// What is under the hand while fields give way to new ones: the focus, the caret, what is typed and was not heard yet, and
// where all this stands in the window.

/** While something is drawn along or a list hangs open, nothing may be drawn anew: it would be gone. */
const BUSY = ["#fields .moved", ...(CSS.supports("selector(select:open)") ? ["#fields select:open"] : [])].join();
export const isBusy = () => document.querySelector(BUSY) !== null;

/** Take note of it, and return what puts it into the fields that are there then. Paths lead by `moved`; what `heard` names was answered. */
export function underHand(box, moved, heard) {
  const at = document.activeElement, top = at.getBoundingClientRect().top, caret = [at.selectionStart, at.selectionEnd];
  const isWithin = box.contains(at), isText = at.tagName === "INPUT";
  const typed = [...box.querySelectorAll("input[data-path]")].filter((one) => isTyped(one) && (one === at || one.pathNow() !== heard))
    .map((one) => ({ path: movedKey(one.pathNow(), moved), value: one.value, isLeft: one !== at }));
  const after = isWithin ? successor(at, box, moved) : tabOf(at);
  return () => {
    for (const one of typed.filter((each) => each.path)) write(fieldAt(box, one.path), one);
    const next = at.isConnected ? at : after?.();
    if (!next) return;
    next.focus({ preventScroll: isWithin });
    if (isText && next.tagName === "INPUT" && caret[0] !== null) next.setSelectionRange(...caret);
    if (isWithin) scrollBy(0, next.getBoundingClientRect().top - top);
  };
}

const isTyped = (one) => one.value !== one.defaultValue;
const fieldAt = (box, path) => box.querySelector(`[data-path='${CSS.escape(path)}']`);
const named = (box, name) => name && box.querySelector(`[aria-label="${CSS.escape(name)}"]:not(:disabled)`);

/** The path of a field, or of a group, as it is after a change. */
export function movedKey(key, moved) {
  const path = moved(JSON.parse(key));
  return path && JSON.stringify(path);
}

/** What was left and never went out goes out now. */
function write(field, { value, isLeft }) {
  if (field?.tagName !== "INPUT" || isTyped(field)) return;
  field.value = value;
  if (isLeft) field.dispatchEvent(new Event("change"));
}

/** What stands in the place of what had the focus: the same field, group or button; else the section it was in. */
function successor(at, box, moved) {
  const group = at.matches("summary") && at.parentElement.dataset.group, name = at.getAttribute("aria-label");
  const key = at.pathNow ? movedKey(at.pathNow(), moved) : group && movedKey(group, moved);
  const found = () => at.pathNow ? key && fieldAt(box, key) : group ? key && box.querySelector(`[data-group='${CSS.escape(key)}'] > summary`) : named(box, name);
  return () => found() || document.querySelector("#sections [aria-current]");
}

function tabOf(at) {
  const href = at.closest("#sections") && at.getAttribute("href");
  return href && (() => document.querySelector(`#sections [href="${CSS.escape(href)}"]`));
}
