/**
 * Latest asks one question at a time. While an answer is awaited only the
 * newest further question is kept; what was asked before it is never sent. An
 * answer that comes after forget is dropped.
 */
export class Latest<Q, A> {
  #number = 0;
  #busy = false;
  #waiting: { question: Q } | null = null;

  constructor(
    private readonly send: (q: Q) => Promise<A>,
    private readonly take: (answer: A, question: Q) => void,
    private readonly fail: (err: unknown, question: Q) => void,
  ) {}

  /** ask sends the question, or keeps it until the answer to the one before is there. */
  ask(question: Q): void {
    if (this.#busy) {
      this.#waiting = { question };
      return;
    }
    void this.#run(question);
  }

  /** forget drops whatever is on its way. */
  forget(): void {
    this.#number++;
    this.#waiting = null;
  }

  async #run(question: Q): Promise<void> {
    const number = this.#number;
    this.#busy = true;
    try {
      const answer = await this.send(question);
      if (number === this.#number) this.take(answer, question);
    } catch (err) {
      if (number === this.#number) this.fail(err, question);
    } finally {
      this.#busy = false;
      const next = this.#waiting;
      this.#waiting = null;
      if (next) void this.#run(next.question);
    }
  }
}
