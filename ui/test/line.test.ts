import { expect, test } from "vitest";
import type { Ask, Preview } from "../src/api.ts";
import { Line } from "../src/server/line.ts";

/** Wire stands in for a WebSocket: what is sent is kept, answers are given by hand. */
class Wire {
  readonly OPEN = 1;
  readyState = 0;
  sent: string[] = [];
  onmessage: ((e: { data: string }) => void) | null = null;
  onclose: (() => void) | null = null;
  send(text: string): void {
    this.sent.push(text);
  }
  answer(reply: unknown): void {
    this.onmessage?.({ data: JSON.stringify(reply) });
  }
  close(): void {
    this.readyState = 3;
    this.onclose?.();
  }
}

const question = (sheet: string): Ask => ({ sheet, look: {} });
const preview = (name: string): Preview => ({ name }) as Preview;

function lineOf(wires: Wire[]): { line: Line; singly: string[] } {
  const singly: string[] = [];
  const line = new Line(
    () => {
      const wire = new Wire();
      wires.push(wire);
      return wire as unknown as WebSocket;
    },
    async (q) => {
      singly.push(q.sheet!);
      return preview(`single ${q.sheet}`);
    },
  );
  return { line, singly };
}

test("answers belong to questions in their order, and a problem is one's own", async () => {
  const wires: Wire[] = [];
  const { line, singly } = lineOf(wires);
  line.open();
  wires[0]!.readyState = 1;
  const [a, b, c] = [line.ask(question("a")), line.ask(question("b")), line.ask(question("c"))];
  wires[0]!.answer({ preview: preview("A"), problem: null });
  wires[0]!.answer({ preview: null, problem: { code: "unusable", message: "b is bent" } });
  wires[0]!.answer({ preview: preview("C"), problem: null });
  expect((await a).name).toBe("A");
  await expect(b).rejects.toThrow("b is bent");
  expect((await c).name).toBe("C");
  expect(wires[0]!.sent.map((s) => JSON.parse(s).sheet)).toEqual(["a", "b", "c"]);
  expect(singly).toEqual([]);
});

test("until the line is open, and when it has broken, questions go singly and none is lost", async () => {
  const wires: Wire[] = [];
  const { line, singly } = lineOf(wires);
  expect((await line.ask(question("early"))).name).toBe("single early");
  wires[0]!.readyState = 1;
  const waits = line.ask(question("cut off"));
  wires[0]!.close();
  expect((await waits).name).toBe("single cut off");
  expect((await line.ask(question("after"))).name).toBe("single after");
  expect(singly).toEqual(["early", "cut off", "after"]);
  expect(wires.length).toBe(1); // not tried again at once
});

test("a line hung up on purpose answers who still waits", async () => {
  const wires: Wire[] = [];
  const { line, singly } = lineOf(wires);
  line.open();
  wires[0]!.readyState = 1;
  const waits = line.ask(question("late"));
  line.close();
  expect((await waits).name).toBe("single late");
  expect(singly).toEqual(["late"]);
});
