import { afterAll, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { demoPlan } from "../../sample-terrain/plans.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { Plan } from "../../shared/plan.ts";
import { apply, startFrom } from "../../src/document/store.ts";
import { sizedIsWhole } from "../../src/live/current.ts";
import { ground } from "../../src/live/ground.ts";
import { sized } from "../../src/live/results.ts";
import { keepSideways, sidewaysNow, whyHere } from "../../src/live/search/why-here.ts";
import { keepSection } from "../../src/live/section-now.ts";
import { keepSimulated, simulatedLine } from "../../src/live/simulated.ts";
import { keepSized } from "../../src/live/sizing.ts";
import { keepTraced } from "../../src/live/tracing.ts";
import { waterNow } from "../../src/live/water-now.ts";

const asked = vi.hoisted(() => ({ names: [] as string[] }));
/** An engine that answers at once and writes down what it was asked. */
vi.mock("../../src/engine.ts", () => {
  const answers = (name: string, answer: (request: never) => unknown) => (request: never) => {
    asked.names.push(name);
    return Promise.resolve(answer(request));
  };
  const lines = ({ plan: of, live }: { plan: Plan; live: boolean }) => ({
    lines: of.alignments.map(({ id }) => ({
      id,
      checks: [],
      totals: { lengthM: 10, greatestHeightAtM: 5 },
      isLive: live,
    })),
  });
  return {
    engine: {
      size: answers("size", lines as never),
      traceWater: answers("traceWater", () => ({ alternatives: [], checks: [], mask: {} })),
      sidewaysCost: answers("sidewaysCost", () => ({ chainageM: [] })),
      crossSection: answers("crossSection", () => ({})),
      simulateGround: answers("simulateGround", (({ id }: { id: string }) => ({
        lineId: id,
      })) as never),
    },
  };
});

const start = demoPlan(1);
let stops: readonly (() => void)[] = [];

beforeAll(async () => {
  vi.useFakeTimers();
  vi.stubGlobal("window", new EventTarget());
  ground.value = { bounds: [-180, -90, 180, 90], marksAsked: [] } as unknown as GroundSummary;
  startFrom({ plan: start });
  whyHere.value = true;
  stops = [keepSized(), keepSimulated(), keepTraced(), keepSideways(), keepSection()];
});

afterAll(() => {
  for (const stop of stops) stop();
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

beforeEach(async () => {
  startFrom({ plan: start });
  await rest();
});

async function rest(): Promise<void> {
  await vi.advanceTimersByTimeAsync(2_000);
}

/** What the engine was asked, each once, after a change of the plan and a rest. */
async function askedAfter(change: (now: Plan) => Plan): Promise<readonly string[]> {
  asked.names.length = 0;
  expect(apply({ note: "Change it", change })).toMatchObject({ ok: true });
  await rest();
  return [...new Set(asked.names)].sort();
}

const ALL = ["crossSection", "sidewaysCost", "simulateGround", "size", "traceWater"];

describe("what follows from the plan", () => {
  it("is there, and of the plan as it stands, once it rests", () => {
    expect(sized.value.size).toBe(start.alignments.length);
    expect(sizedIsWhole.value).toBe(true);
    expect(waterNow.value).not.toBeNull();
    expect(sidewaysNow.value).not.toBeNull();
  });

  it("is not computed again for another title", async () => {
    expect(await askedAfter((now) => ({ ...now, title: "Another" }))).toEqual([]);
    expect(sizedIsWhole.value).toBe(true);
    expect(waterNow.value).not.toBeNull();
    expect(sidewaysNow.value).not.toBeNull();
  });

  it("is sized for no other line when one is chosen; only what is of one line is asked", async () => {
    const other = start.alignments.find(({ id }) => id !== start.chosenId)!;
    const names = await askedAfter((now) => ({ ...now, chosenId: other.id }));
    expect(names).toEqual(["crossSection", "sidewaysCost", "simulateGround", "traceWater"]);
    expect(simulatedLine.value?.simulatedGround?.lineId).toBe(other.id);
    expect(waterNow.value).not.toBeNull();
  });

  const people = start.practice.people === 40 ? 41 : 40;
  it.each<[string, (now: Plan) => Plan, readonly string[]]>([
    ["water", (now) => ({ ...now, water: { ...now.water, freeboardM: 0.5 } }), ALL],
    ["lines", (now) => ({ ...now, alignments: now.alignments.slice(0, -1) }), ALL],
    ["flow", (now) => ({ ...now, flow: null }), ALL],
    ["gauge", (now) => ({ ...now, gauge: null, flow: null }), ALL],
    ["structures", (now) => ({ ...now, structures: now.structures.slice(1) }), ALL],
    ["sources", withSource, ALL],
    ["accuracy", (now) => ({ ...now, ground: { ...now.ground, rmseM: 0.31 } }), ALL],
    [
      "people",
      (now) => ({ ...now, practice: { ...now.practice, people } }),
      ["crossSection", "sidewaysCost", "simulateGround", "size"],
    ],
    [
      "levee type",
      (now) => ({ ...now, section: { ...now.section, crownM: 0.7 } }),
      ["crossSection", "sidewaysCost", "simulateGround", "size"],
    ],
    ["soil and pumps", withHolding, ["crossSection", "simulateGround", "size"]],
    ["culverts", withCulvert, ["crossSection", "simulateGround", "size", "traceWater"]],
    ["readings of the ground", withReading, ["crossSection", "simulateGround", "size"]],
  ])("is asked again for other %s", async (_, change, names) => {
    expect(await askedAfter(change)).toEqual(names);
    expect(sizedIsWhole.value).toBe(true);
    expect(waterNow.value).not.toBeNull();
  });
});

describe("while a button is held down", () => {
  it("the water is followed when it is let go, once, after a slow trace", async () => {
    vi.spyOn(performance, "now").mockReturnValueOnce(0).mockReturnValueOnce(900);
    await askedAfter((now) => ({ ...now, sources: [] }));
    window.dispatchEvent(new Event("pointerdown"));
    const names = await askedAfter((now) => ({ ...now, flow: null }));
    expect(names).toContain("size");
    expect(names).not.toContain("traceWater");
    expect(waterNow.value).toBeNull();
    window.dispatchEvent(new Event("pointerup"));
    await rest();
    expect(asked.names.filter((name) => name === "traceWater")).toHaveLength(1);
    expect(waterNow.value).not.toBeNull();
    asked.names.length = 0;
    window.dispatchEvent(new Event("pointerdown"));
    window.dispatchEvent(new Event("pointerup"));
    await rest();
    expect(asked.names).toEqual([]);
  });
});

function withSource(now: Plan): Plan {
  return { ...now, sources: [{ id: "s", name: "River", at: now.structures[0]!.outline[0]! }] };
}

function withCulvert(now: Plan): Plan {
  const [a, b] = now.structures[0]!.outline;
  const pipe = { invertsM: [null, null] as const, sizeM: null, gate: null, plugged: false };
  return { ...now, culverts: [{ id: "c", name: "Culvert 1", path: [a!, b!], ...pipe }] };
}

function withReading(now: Plan): Plan {
  const reading = { at: now.alignments[0]!.corners[0]!, groundM: 266 };
  return { ...now, survey: { benchmark: null, backsightM: null, readings: [reading] } };
}

function withHolding(now: Plan): Plan {
  expect(now.holding).toBeDefined();
  return { ...now, holding: { ...now.holding!, soil: "coarse-sand" } };
}
