// Questions about readings that the program did not write down as they came: two choices each, none of which loses one.

import { unbroken } from "/static/page.js";
import { drop, insist, retry } from "/static/telephone_queue.js";

export function element(kind, words, name) {
  const made = document.createElement(kind);
  made.textContent = unbroken(words);
  if (name) made.className = name;
  return made;
}

export function box(words, ...choices) {
  const made = element("div", "");
  made.append(element("p", words));
  const two = element("div", "", "two");
  for (const [name, act] of choices) {
    const button = element("button", name);
    button.type = "button";
    button.addEventListener("click", act);
    two.append(button);
  }
  made.append(two);
  return made;
}

/** A box for each reading. `settled(entry, isMine)`: somebody has chosen; `again(entry)`: how its place is asked for once more, if it is here. */
export function askBoxes(kept, settled, again = () => null) {
  const chosen = (act, entry, isMine) => () => { act(entry.id); settled(entry, isMine); };
  return kept.map((one) => {
    if (one.there)
      return box(
        `${one.mark}, place ${one.place}: ${one.there} stands there already${one.by ? `, read by ${one.by}` : ""}. You read ${one.text}.`,
        [`Keep ${one.there}`, chosen(drop, one, false)],
        [`Write ${one.text}`, chosen(insist, one, true)],
      );
    const words = `${one.mark}, ${one.asked || `place ${one.place}`}, ${one.text}: ${one.said}`;
    const anew = again(one);
    if (anew) return box(words, ["Measure again", () => { drop(one.id); anew(); settled(one, true); }]);
    return box(words, ["Try again", chosen(retry, one, true)], [`Leave out ${one.text}`, chosen(drop, one, true)]);
  });
}
