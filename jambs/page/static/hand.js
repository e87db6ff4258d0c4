// Where the hand is, to the program and back: numbered, the newest only, answers that come late are dropped.

import { ofView } from "/static/page.js";

export class Hand {
  constructor(mark, onAnswer) {
    this.mark = mark;
    this.onAnswer = onAnswer;
    this.sent = 0;
    this.shown = 0;
    this.waiting = null;
    this.isBusy = false;
    const { signal } = ofView();
    signal.addEventListener("abort", () => this.socket?.close());
  }

  /** Take hold: the program looks at the job anew. */
  take(alone) {
    this.alone = alone;
    this.first = true;
    if (this.socket && this.socket.readyState <= WebSocket.OPEN) return;
    this.socket = new WebSocket(`ws://${location.host}/hand`);
    this.socket.addEventListener("open", () => this.#send());
    this.socket.addEventListener("message", (event) => this.#take(JSON.parse(event.data)));
    this.socket.addEventListener("close", () => { this.isBusy = false; });
  }

  /** Say where the window is wanted; what was not sent yet is forgotten. */
  want(plane, reach, cut, rests = false) {
    this.waiting = { plane, reach, cut, rests };
    this.#send();
  }

  let() { this.waiting = null; }

  #send() {
    if (this.isBusy || !this.waiting || this.socket?.readyState !== WebSocket.OPEN) return;
    this.sent += 1;
    this.isBusy = true;
    this.socket.send(JSON.stringify({ n: this.sent, mark: this.mark, alone: this.alone, first: this.first, ...this.waiting }));
    this.waiting = null;
    this.first = false;
  }

  #take(answer) {
    this.isBusy = false;
    if (answer.n > this.shown) {
      this.shown = answer.n;
      this.onAnswer(answer);
    }
    this.#send();
  }
}
