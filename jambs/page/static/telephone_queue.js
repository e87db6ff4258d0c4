// Readings that wait in the telephone until the program has written them down and said so, first in, first out.

const KEPT = "jambs-readings";
const PATIENCE = 10000; // so long an answer is waited for [ms]
const AGAIN = 4000; // after this it is tried again [ms]
const SLOW = 1500; // after this it is said that readings are on the way [ms]

export function waiting() {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) || "[]");
    return Array.isArray(kept) ? kept : [];
  } catch {
    return [];
  }
}

function keep(entries) {
  localStorage.setItem(KEPT, JSON.stringify(entries));
}

/** An id that no other reading has; the safe source of chance is there without https too. */
function newId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

export function put(entry) {
  const whole = { ...entry, id: newId() };
  keep([...waiting(), whole]);
  return whole;
}

export function drop(id) {
  keep(waiting().filter((one) => one.id !== id));
}

/** Let a reading go out once more as it is. */
export function retry(id) {
  mark(id, { there: undefined, said: undefined });
}

/** Let a reading through over the other one, which has been seen now. */
export function insist(id) {
  keep(waiting().map((one) => (one.id === id ? { ...one, was: one.there, there: undefined, said: undefined } : one)));
}

function mark(id, found) {
  keep(waiting().map((one) => (one.id === id ? { ...one, ...found } : one)));
}

export function needsSomebody(entry) {
  return Boolean(entry.there || entry.said);
}

async function sent(entry) {
  const { there, said, changed, ...reading } = entry;
  return fetch("/telephone/reading", {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify(reading),
    signal: AbortSignal.timeout(PATIENCE),
  });
}

/** Keeps sending what waits. `tell` is called with what has to be shown: {answer}, {asks}, {network}. */
export function sender(tell) {
  let busy = false;
  let timer = 0;

  const going = () => waiting().filter((one) => !needsSomebody(one)).length;

  function network(said) {
    const count = going();
    const kept = count === 1 ? "1 reading is kept in this telephone" : `${count} readings are kept in this telephone`;
    tell({ network: count ? `${kept}: ${said || "on the way"}` : "" });
  }

  async function send() {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    const slow = setInterval(network, SLOW, ""); // nobody is left to wonder whether it went out
    let said = "";
    const held = new Set(); // openings that have to wait: what was read of others goes out all the same
    try {
      for (;;) {
        const entry = waiting().find((one) => !needsSomebody(one) && !held.has(one.mark));
        if (!entry) break;
        const answer = await sent(entry);
        if (answer.ok) {
          const found = await answer.json();
          drop(entry.id);
          tell({ answer: found.answer, mark: entry.mark });
        } else if (answer.status === 409) {
          mark(entry.id, await answer.json());
        } else if (answer.status === 422 || answer.status === 400) {
          mark(entry.id, await answer.json());
        } else if (answer.status === 403) {
          said = "this telephone is let in no longer; open the program's code again";
          break;
        } else {
          said = answer.status === 503 ? (await answer.json()).said : "the program has no answer; it is tried again";
          held.add(entry.mark);
        }
      }
    } catch {
      said = "no network, so it is sent again when that is back";
    }
    busy = false;
    clearInterval(slow);
    network(said);
    timer = going() ? setTimeout(send, AGAIN) : 0;
    tell({ asks: waiting().filter(needsSomebody) });
  }

  addEventListener("online", send);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && send());
  return send;
}
