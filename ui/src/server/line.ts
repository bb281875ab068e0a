/** A connection that stays open, on which previews are asked while a finger moves. */

import type { Ask, Preview, Reply } from "../api.ts";
import { ask, Trouble } from "./client.ts";

/** pause is how long after one attempt the next one is made, ms. */
const pause = 2000;

/** Asked is a question that waits for its answer. */
interface Asked {
  question: Ask;
  take: (answer: Preview) => void;
  fail: (why: unknown) => void;
}

/**
 * Line asks one preview after the other and gets the answers in order. A
 * request of its own for each move of a finger would cost the browser more
 * than the answer costs the program. Where the connection cannot be had, or
 * breaks, questions go as requests of their own.
 */
export class Line {
  #socket: WebSocket | null = null;
  #asked: Asked[] = [];
  #rest = 0; // not to be tried again before, ms

  constructor(
    private readonly connect: () => WebSocket = connected,
    private readonly single: (question: Ask) => Promise<Preview> = (question) =>
      ask("POST /api/preview", { in: question }),
  ) {}

  /** open connects, so that the first question need not wait for it. */
  open(): void {
    if (this.#socket || performance.now() < this.#rest) return;
    this.#rest = performance.now() + pause;
    const socket = this.connect();
    socket.onmessage = (e) => this.#answered(JSON.parse(e.data) as Reply);
    socket.onclose = () => {
      if (this.#socket === socket) this.#broken();
    };
    this.#socket = socket;
  }

  /** close hangs up. Whoever still waits is answered by a request. */
  close(): void {
    const socket = this.#socket;
    this.#broken();
    socket?.close();
  }

  /** ask returns the preview. It throws a Trouble. */
  ask(question: Ask): Promise<Preview> {
    const socket = this.#socket;
    if (!socket || socket.readyState !== socket.OPEN) {
      this.open();
      return this.single(question);
    }
    socket.send(JSON.stringify(question));
    return new Promise((take, fail) => this.#asked.push({ question, take, fail }));
  }

  #answered(reply: Reply): void {
    const first = this.#asked.shift();
    if (reply.preview) first?.take(reply.preview);
    else if (reply.problem) first?.fail(new Trouble(reply.problem));
  }

  #broken(): void {
    const waiting = this.#asked;
    this.#socket = null;
    this.#asked = [];
    for (const { question, take, fail } of waiting) this.single(question).then(take, fail);
  }
}

function connected(): WebSocket {
  const address = new URL("/api/line", location.href);
  address.protocol = address.protocol.replace("http", "ws");
  return new WebSocket(address);
}
