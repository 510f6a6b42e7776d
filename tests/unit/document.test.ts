import { effect } from "@preact/signals";
import { beforeEach, describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { validateChange, validatePlan } from "../../shared/plan-check.ts";
import { planFileName } from "../../src/document/files.ts";
import { apply, history, plan, startFrom } from "../../src/document/store.ts";
import { said } from "../helpers/said.ts";

const CORNERS: readonly LonLat[] = [
  [12.1, 51.1],
  [12.101, 51.1],
  [12.101, 51.101],
];
const RING: Alignment = { id: "a", name: "A", kind: "ring", corners: CORNERS, reachBreaksM: [10] };
const HOUSE = { id: "s", name: "House", outline: CORNERS, floorM: 263 };
const START: Plan = { ...EMPTY_PLAN, alignments: [RING], structures: [HOUSE] };

/** What is wrong, an edit that makes it so, words that name it. */
const REFUSED: readonly (readonly [string, (now: Plan) => unknown, string])[] = [
  [
    "a corner at NaN",
    (now) => ring(now, { corners: [...CORNERS, [Number.NaN, 51]] }),
    'Line "A", corner 4',
  ],
  [
    "a corner beyond the pole",
    (now) => ring(now, { corners: [...CORNERS, [12, 91]] }),
    "came [12, 91]",
  ],
  [
    "a corner with a height",
    (now) => ring(now, { corners: [...CORNERS, [12, 51, 3]] }),
    "corner 4",
  ],
  [
    "two corners left of a ring",
    (now) => ring(now, { corners: CORNERS.slice(1) }),
    "from 3 to 2000; came 2",
  ],
  [
    "two corners at one place",
    (now) => ring(now, { corners: [...CORNERS, CORNERS[2]] }),
    "corners 3 and 4",
  ],
  [
    "the first corner repeated",
    (now) => ring(now, { corners: [...CORNERS, CORNERS[0]] }),
    "corners 4 and 1",
  ],
  ["an unknown kind", (now) => ring(now, { kind: "spiral" }), "ring or line"],
  ["an empty name", (now) => ring(now, { name: "" }), "name"],
  ["a blank name", (now) => ring(now, { name: "   " }), "name"],
  ["a name too long", (now) => ring(now, { name: "x".repeat(121) }), "120 characters"],
  ["a name with control characters", (now) => ring(now, { name: "a\u0007" }), "plain text"],
  ["reach breaks out of order", (now) => ring(now, { reachBreaksM: [20, 10] }), "reachBreaksM"],
  ["an entry that is not known", (now) => ring(now, { bags: 20_000 }), "bags"],
  ["an identifier twice", (now) => ({ ...now, alignments: [RING, { ...RING }] }), '"a" came twice'],
  [
    "51 alignments",
    (now) => ({
      ...now,
      alignments: Array.from({ length: 51 }, (_, i) => ({ ...RING, id: `${i}` })),
    }),
    "at most 50",
  ],
  ["a list that is none", (now) => ({ ...now, alignments: {} }), "lines as a list"],
  ["a missing list", (now) => ({ ...now, noGo: undefined }), "no-go areas as a list"],
  ["a missing group", (now) => ({ ...now, water: undefined }), "water as an object"],
  ["a group with a hole", (now) => ({ ...now, water: { by: "stage" } }), "stageM"],
  [
    "a group with more than it has",
    (now) => ({ ...now, water: { ...now.water, mood: 1 } }),
    "mood",
  ],
  [
    "a stage at infinity",
    (now) => ({ ...now, water: { ...now.water, stageM: Infinity } }),
    "water.stageM",
  ],
  [
    "a freeboard below zero",
    (now) => ({ ...now, water: { ...now.water, freeboardM: -0.1 } }),
    "came -0.1",
  ],
  ["a chosen one that is not there", (now) => ({ ...now, chosenId: "z" }), '"z"'],
  ["an entry of the plan that is not known", (now) => ({ ...now, totals: 5 }), '"totals"'],
  ["no plan", () => null, "came nothing"],
  ["a list for a plan", () => [], "Expected a plan"],
];

function ring(now: Plan, more: object): unknown {
  return { ...now, alignments: now.alignments.map((line) => ({ ...line, ...more })) };
}

beforeEach(() => {
  startFrom({ plan: START });
});

describe("the gate", () => {
  it.each(REFUSED)("refuses %s, names it, and changes nothing", (_wrong, change, cause) => {
    const before = history.value;
    const outcome = apply({ note: "Spoil", change: change as (now: Plan) => Plan });
    expect(outcome).toMatchObject({ ok: false, failure: { code: "plan/invalid" } });
    expect(outcome.ok ? "" : said(outcome.failure).message).toContain(cause);
    expect(history.value).toBe(before);
    expect(validatePlan(change(START)).ok).toBe(false);
  });

  it("makes no step and no notice for an edit that changes nothing", () => {
    let seen = 0;
    const stop = effect(() => {
      seen += plan.value ? 1 : 0;
    });
    expect(apply({ note: "Nothing", change: (now) => now }).ok).toBe(true);
    stop();
    expect(seen).toBe(1);
    expect(history.value.done).toEqual([]);
  });

  it("lets a bug in an edit out, and changes nothing", () => {
    const before = history.value;
    const change = () => {
      throw new TypeError("a bug");
    };
    expect(() => apply({ note: "Break", change })).toThrow("a bug");
    expect(history.value).toBe(before);
  });

  it("freezes what it lets through, to its depth", () => {
    const corners = CORNERS.map(([lon, lat]) => [lon, lat] as [number, number]);
    apply({ note: "Add B", change: (now) => ({ ...now, alignments: [{ ...RING, corners }] }) });
    expect(() => {
      (corners[0] as [number, number])[0] = 0;
    }).toThrow(TypeError);
    expect(() => Object.assign(plan.value.water, { stageM: 5 })).toThrow(TypeError);
  });

  it("looks again at everything that is not shared with a valid plan", () => {
    const spoilt = { ...HOUSE, floorM: "high" };
    const after = { ...START, structures: [HOUSE, spoilt] };
    expect(validateChange(START, after)).toMatchObject({ ok: false });
    expect(validateChange(START, { ...START, structures: [HOUSE, { ...HOUSE, id: "t" }] }).ok).toBe(
      true,
    );
  });
});

describe("the name of a saved plan", () => {
  it.each([
    ["Mill cottage, draft 2", "Mill-cottage-draft-2.geojson"],
    ["../../etc/passwd", "etc-passwd.geojson"],
    ["Überlauf Nord", "Überlauf-Nord.geojson"],
    ["<b>:*?</b>", "b-b.geojson"],
    ["...", "plan.geojson"],
    ["x".repeat(100), `${"x".repeat(60)}.geojson`],
  ])("from %s is %s", (title, name) => {
    expect(planFileName(title)).toBe(name);
  });
});
