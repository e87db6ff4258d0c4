// Photos that wait in the telephone until the program has them, in the browser's own store, under mark and moment.

import { smaller } from "/static/telephone_shrink.js";

const STORE = "photos";
const AGAIN = 5000; // after this it is tried again [ms]
const PATIENCE = 180000; // so long an answer is waited for [ms]: half a megabyte on a network that is hardly there

function opened() {
  return new Promise((done, failed) => {
    const asked = indexedDB.open("jambs", 1);
    asked.onupgradeneeded = () => asked.result.createObjectStore(STORE);
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
}

async function inStore(how, act) {
  const store = await opened();
  try {
    return await new Promise((done, failed) => {
      const asked = act(store.transaction(STORE, how).objectStore(STORE));
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => failed(asked.error);
    });
  } finally {
    store.close();
  }
}

export const keepPhoto = async (mark, picture) => {
  const content = await (await smaller(picture)).arrayBuffer();  // a file that is taken with the camera may be gone later
  return inStore("readwrite", (store) => store.put(content, `${mark}\n${Date.now()}`));
};

const TAKEN_NEVER = [413, 422]; // too large, or no photo: sending it again would not help

/** Keeps sending what waits. `tell(mark, said, isThere, leaveOut)` is called with what became of a photo. */
export function photoSender(tell) {
  let busy = false, timer = 0;

  async function send() {
    if (busy) return;
    busy = true;
    clearTimeout(timer);
    try {
      for (const key of await inStore("readonly", (store) => store.getAllKeys())) await one(key, key.split("\n")[0]);
    } catch {
      timer = setTimeout(send, AGAIN);
    }
    busy = false;
  }

  async function one(key, mark) {
    const content = await inStore("readonly", (store) => store.get(key));
    let answer;
    try {
      answer = await fetch(`/telephone/photo/${encodeURIComponent(mark)}`, { method: "POST", body: content, signal: AbortSignal.timeout(PATIENCE) });
    } catch (error) {
      tell(mark, "No network: the photo is kept in this telephone and goes out by itself.", false, () => inStore("readwrite", (store) => store.delete(key)));
      throw error;
    }
    const leaveOut = () => inStore("readwrite", (store) => store.delete(key));
    const unsaid = answer.status === 413 ? "The photo is too large: take a smaller one." : "The program does not take it now.";
    const { said } = await answer.json().catch(() => ({ said: unsaid }));
    if (answer.ok || TAKEN_NEVER.includes(answer.status)) {
      await leaveOut();
      tell(mark, said, answer.ok, () => {});
      return;
    }
    tell(mark, `${said} It is kept in this telephone.`, false, leaveOut);
    if (answer.status !== 404) throw new Error("later");
  }

  addEventListener("online", send);
  return send;
}
