import { describe, expect, it } from "vitest";
import type { Explanation, MachineCard } from "../src/api.ts";
import { escaped, leaf } from "../src/explain/leaf.ts";
import { onlyIn } from "../src/screens/machine/conflict.tsx";
import { stepped } from "../src/screens/machine/stepped.ts";
import { event } from "../src/server/client.ts";
import { Latest } from "../src/server/latest.ts";
import { matches, sorted } from "../src/state/order.ts";
import { travelAt } from "../src/state/travel.ts";
import { beside, fixed, force, imperial, lengthText, mass, metric } from "../src/units.ts";

describe("units", () => {
  it("are exact: 1 lb = 0.45359237 kg, 1 in = 25.4 mm, standard gravity 9.80665 m/s²", () => {
    expect(force(imperial, 4.4482216152605 * 100)).toBe("100\u00a0lbf"); // pound-force from the three above
    expect(mass(imperial, 20)).toBe("44\u00a0lb");
    expect(lengthText(imperial, 0.0254 * 17.5)).toBe("17.50\u00a0in");
    expect(lengthText(metric, 0.812)).toBe("812\u00a0mm");
  });
  it("stand beside a text of the sheet in the other ones", () => {
    expect(beside(imperial, "40 kg")).toBe("40 kg (88\u00a0lb)"); // 88.18
    expect(beside(imperial, "2.5 kg")).toBe("2.5 kg (5.5\u00a0lb)");
    expect(beside(imperial, "160 mm")).toBe("160 mm (6.3\u00a0in)");
    expect(beside(metric, "45 lb")).toBe("45 lb (20.4\u00a0kg)");
    for (const text of ["40 kg", "middle", "3", "30 deg"]) expect(beside(metric, text)).toBe(text);
    for (const text of ["45 lb", "middle", "3", "30 deg"]) expect(beside(imperial, text)).toBe(text);
  });
  it("write a true minus, and none before nought", () => {
    expect(fixed(-3.06, 1)).toBe("\u22123.1");
    expect(fixed(-0.01, 1)).toBe("0.0");
  });
});

describe("a stepped number", () => {
  const mm = { unit: "mm", value: 690 };
  it("keeps unit, ± and note", () => {
    expect(stepped("690 ± 10 mm", mm, 1)).toBe("691 ± 10 mm");
    expect(stepped("690 ± 10", mm, -10)).toBe("680 ± 10");
  });
  it("keeps its digits", () => {
    expect(stepped("13.5 ± 0.5 kg", { unit: "kg", value: 13.5 }, 1)).toBe("14 ± 0.5 kg");
    expect(stepped("81.25 cm", { unit: "cm", value: 81.25 }, 1)).toBe("81.35 cm");
    expect(stepped("-5 mm", mm, 10)).toBe("5 mm");
  });
  it("leaves fractions of an inch and words alone", () => {
    expect(stepped("17 1/2 in", { unit: "in", value: 17.5 }, 1)).toBeNull();
    expect(stepped("about so long", mm, 1)).toBeNull();
  });
});

const card = (name: string, peak: number, thirds: [number, number, number], muscles: string[] = []): MachineCard => ({
  id: name,
  kind: "machine",
  name,
  revision: 1,
  saved: "",
  demo: false,
  removed: false,
  notes: "",
  contact: "grip",
  settings: [],
  loads: "",
  sign: { path: [], normal: [], force: [], peak, mean: 0, travel: 0, thirds, ratio: 0 },
  trouble: "",
  exercises: [],
  muscles,
  fit: null,
});

describe("the room", () => {
  const one = card("one", 100, [1, 1, 4], ["triceps"]);
  const two = card("two", 300, [4, 1, 1]);
  const three = card("three", 200, [1, 4, 1]);
  const broken = { ...card("broken", 0, [0, 0, 0]), sign: null };
  const order = (by: "name" | "force" | "start" | "middle" | "end") =>
    sorted([broken, one, two, three], by).map((m) => m.name);
  it("is sorted by name, force and where it loads; what cannot be computed comes last", () => {
    expect(order("name")).toEqual(["broken", "one", "three", "two"]);
    expect(order("force")).toEqual(["two", "three", "one", "broken"]);
    expect(order("start")[0]).toBe("two");
    expect(order("middle")[0]).toBe("three");
    expect(order("end")[0]).toBe("one");
  });
  it("is searched by every word", () => {
    expect(matches(one, "TRI one")).toBe(true);
    expect(matches(one, "triceps two")).toBe(false);
    expect(matches(two, "")).toBe(true);
  });
});

describe("a repetition", () => {
  const stroke = {
    time: [0, 2, 3, 5],
    travel: [0, 0.4, 0.4, 0],
    force: [],
    still: [],
    leaves: [],
    slack: [],
    peak: 0,
    dip: 0,
  };
  it("stands between its rows and begins anew", () => {
    expect([0, 1, 2.5, 4, 5, 6].map((t) => travelAt(stroke, t))).toEqual([0, 0.2, 0.4, 0.2, 0, 0.2]);
  });
  it("without rows stands still", () => {
    expect(travelAt({ ...stroke, time: [], travel: [] }, 1)).toBe(0);
  });
});

describe("latest", () => {
  it("keeps one question in flight, sends only the newest after it, and drops what was forgotten", async () => {
    const sent: number[] = [];
    const taken: number[] = [];
    const answers: (() => void)[] = [];
    const latest = new Latest<number, number>(
      (q) => {
        sent.push(q);
        return new Promise((done) => answers.push(() => done(q)));
      },
      (a) => taken.push(a),
      (err) => {
        throw err;
      },
    );
    for (const q of [1, 2, 3]) latest.ask(q);
    expect(sent).toEqual([1]);
    answers[0]!();
    await expect.poll(() => sent).toEqual([1, 3]);
    latest.forget();
    answers[1]!();
    await new Promise((done) => setTimeout(done));
    expect(taken).toEqual([1]);
    latest.ask(4);
    answers[2]!();
    await expect.poll(() => taken).toEqual([1, 4]);
  });
});

describe("events", () => {
  it("carry a name and JSON, in several lines if need be", () => {
    expect(event('event: progress\ndata: {"done":3,\ndata: "total":9}')).toEqual(["progress", { done: 3, total: 9 }]);
    expect(event(": only a comment")).toEqual(["message", null]);
  });
});

describe("two texts", () => {
  it("differ in the lines only one has", () => {
    expect(onlyIn("a\nb\nc", "a\nc")).toEqual(["b"]);
  });
});

describe("the client's page", () => {
  const hostile = '</script><img src=x onerror="alert(1)"> & </title>';
  const preview = { name: hostile, text: "", structure: null, stroke: null } as unknown as Explanation["preview"];
  const page = leaf(
    { explanation: { steps: [], message: hostile, preview }, imperial: false },
    "/* </script> */",
    "/* </style> */",
  );
  it("holds what people wrote as text only", () => {
    expect(page).not.toContain("<img");
    expect(page).toContain(`<title>${escaped(hostile)}</title>`);
    expect(page.match(/<\/script>/g)?.length).toBe(2); // the two of the page itself
    expect(page.match(/<\/style>/g)?.length).toBe(1);
  });
  it("gives back what was put in", () => {
    const json = /id="explanation">(.*?)<\/script>/s.exec(page)![1]!;
    expect(JSON.parse(json).explanation.message).toBe(hostile);
  });
});
