import { describe, expect, it } from "vitest";
import type { CulvertCandidate } from "../../shared/pipes/candidates.ts";
import { drawnCulvert } from "../../shared/pipes/drawn-pipes.ts";
import type { Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { writePlanFile } from "../../shared/plan-write.ts";
import type { Check } from "../../shared/sizing-types.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { overtopsButForGap } from "../../shared/words/ground-gap.ts";
import { pipeStops } from "../../shared/words/pipes.ts";
import { candidatesNote, candidateWords } from "../../shared/words/possible-culverts.ts";
import {
  answerCandidate,
  changeAnswer,
  takeBack,
} from "../../src/document/edits/possible-culverts.ts";
import { plan as document, replacePlan, undo } from "../../src/document/store.ts";
import { candidatesIn } from "../../workers/culverts/candidates-in.ts";
import { traceWater } from "../../workers/water/trace-water.ts";
import { openLine, PLANE, planWith, ring, structure } from "../helpers/grounds.ts";
import { byFormula, gridFrom, type Heights, TURNS, terrainOf } from "../helpers/water-grids.ts";

/*
 * A valley that falls to the east, 1 in 200, with a ditch 1 m deep along its middle, and a road bank 2.4 m high across
 * both at x = 96 to 104, its sides 1 in 2. Without the culvert under the road, at the ditch, the raster has a sag there.
 */
const ROAD_X = 100;
const DITCH_SOUTH = 60;
const [COLUMNS, ROWS] = [180, 121];

function valley(xM: number, southM: number): number {
  const off = Math.abs(southM - DITCH_SOUTH);
  const ditch = Math.min(0, -1 + 0.5 * Math.max(0, off - 1));
  return 100 - xM / 200 + off / 60 + ditch;
}
function withRoad(xM: number, southM: number): number {
  const ground = valley(xM, southM);
  const road = 100 + 2 - 0.5 * Math.max(0, Math.abs(xM - ROAD_X) - 4);
  return Math.max(ground, road);
}
const groundBy = (heightAt: (xM: number, southM: number) => number) =>
  byFormula(COLUMNS, ROWS, heightAt);
const at = (xM: number, southM: number) => PLANE.toLonLat(xM, -southM);
const found = (heights: Heights): CulvertCandidate[] => candidatesIn(gridFrom(heights));
const placeOf = ([lon, lat]: readonly [number, number]) => {
  const [x, y] = PLANE.toPlane([lon, lat]);
  return [Math.round(x), Math.round(-y)];
};

describe("looking for culverts on a raster", () => {
  it("finds the one under a road bank across a ditch, from the sag to the channel behind", () => {
    const all = found(groundBy(withRoad));
    expect(all).toHaveLength(1);
    const [{ ends, ...culvert }] = all as [CulvertCandidate];
    const [[fromX, fromSouth], [toX, toSouth]] = ends.map(placeOf) as [number[], number[]];
    expect(Math.abs(fromSouth! - DITCH_SOUTH)).toBeLessThanOrEqual(1);
    expect(Math.abs(toSouth! - DITCH_SOUTH)).toBeLessThanOrEqual(1);
    expect(fromX).toBeLessThan(ROAD_X - 4);
    expect(toX).toBeGreaterThan(ROAD_X + 4);
    // The bank is level at 102 m; the ditch is at 100 - x / 200 - 1.
    expect(culvert.bankM).toBeCloseTo(102 - (99 - fromX! / 200), 1);
    expect(culvert.fallM).toBeCloseTo((toX! - fromX!) / 200, 2);
    expect(culvert.groundsM[0]).toBeGreaterThan(culvert.groundsM[1]);
  });

  it("finds none in the ditch without a road, nor on the road without a ditch behind it", () => {
    expect(found(groundBy(valley))).toEqual([]);
    const noChannel = (x: number, south: number) =>
      x > ROAD_X ? Math.max(withRoad(x, south), 99) : withRoad(x, south);
    expect(found(groundBy(noChannel))).toEqual([]);
  });

  it("finds the one whose ditch ends behind the bank on a lower plain, and says so", () => {
    const flat = (behindM: number) => (x: number, south: number) => {
      if (x <= ROAD_X + 4) return withRoad(x, south);
      return Math.max(behindM, 102 - 0.5 * (x - ROAD_X - 4));
    };
    const [ditch, ...others] = found(groundBy(flat(98)));
    expect(others).toEqual([]);
    expect(ditch).toMatchObject({ leadsTo: "plain" });
    expect(ditch!.groundsM[1]).toBeCloseTo(98, 5);
    expect(candidateWords(ditch!, "us")).toMatch(/open ground \d\.\d ft lower\.$/);
    expect(found(groundBy(flat(98.5)))).toEqual([]);
  });

  it("finds none where the road is cut open at the ditch", () => {
    const cut = (x: number, south: number) =>
      Math.abs(south - DITCH_SOUTH) < 2 ? valley(x, south) : withRoad(x, south);
    expect(found(groundBy(cut))).toEqual([]);
  });

  it("finds none behind a bank that rises as gently as a natural levee", () => {
    const gentle = (x: number, south: number) =>
      Math.max(valley(x, south), 101 - 0.05 * Math.max(0, Math.abs(x - ROAD_X) - 4));
    expect(found(groundBy(gentle))).toEqual([]);
  });

  it("finds none in noise of the survey", () => {
    const rough = (x: number, south: number) =>
      100 + 0.12 * Math.sin(12.9898 * x + 78.233 * south * south);
    expect(found(groundBy(rough))).toEqual([]);
  });

  it("takes no hole for ground: neither a sag beside one nor a way over one is known", () => {
    const holeAt = (fromX: number, toX: number) => (x: number, south: number) =>
      x >= fromX && x <= toX && Math.abs(south - DITCH_SOUTH) < 4 ? Number.NaN : withRoad(x, south);
    expect(found(groundBy(holeAt(80, 83)))).toEqual([]);
    expect(found(groundBy(holeAt(98, 101)))).toEqual([]);
    expect(found(groundBy(() => Number.NaN))).toEqual([]);
  });

  it("finds the same whichever way the raster lies", () => {
    const heights = groundBy(withRoad);
    const [straight] = found(heights);
    for (const { name, turn } of TURNS) {
      const turned = found(turn(heights));
      expect(turned, name).toHaveLength(1);
      expect(turned[0]!.lengthM, name).toBeCloseTo(straight!.lengthM, 0);
      expect(turned[0]!.sagDepthM, name).toBeCloseTo(straight!.sagDepthM, 5);
    }
    expect(found(heights)).toEqual(found(heights));
  });
});

const BARN = structure("Barn", [
  [60, -70],
  [70, -70],
  [70, -76],
  [60, -76],
]);
const trace = (changes: Partial<Plan>, waterM = 101) =>
  traceWater(terrainOf(groundBy(withRoad)), {
    plan: { ...planWith(waterM, { structures: [BARN] }), ...changes },
  });

/** The river is behind the road, so that the road bank keeps it from the barn. */
const RIVER = { sources: [{ id: "s", name: "River", at: at(150, DITCH_SOUTH) }] };
const AROUND_BARN = [
  ...([
    [54, -64],
    [76, -64],
    [76, -82],
    [54, -82],
  ] as const),
];

describe("a bank with a place where there may be a culvert", () => {
  const answered = (answer: "no" | "look") => ({
    possibleCulverts: [{ id: "p", name: "P", path: [at(90, 60), at(110, 60)], answer }],
  });
  const saysIf = ({ checks }: { checks: readonly Check[] }) =>
    checks.map(({ finding }) => finding.kind).filter((kind) => kind.endsWith("-if-culvert"));

  it("keeps a building dry only if there is none, and that is said of it", async () => {
    const traced = await trace(RIVER);
    expect(traced.structures[0]).toMatchObject({ wet: false, wetIfCulvert: true });
    expect(saysIf(traced)).toEqual(["reached-if-culvert"]);
    const drawn = traced.possibleCulverts.found.map(({ ends }) => drawnCulvert(ends, []));
    const open = await trace({ ...RIVER, culverts: drawn });
    expect(open.structures[0]).toMatchObject({ wet: true, wetIfCulvert: false });
  });

  it("is said to while someone is still to look, and no more once there is none", async () => {
    const look = await trace({ ...RIVER, ...answered("look") });
    expect(look.structures[0]).toMatchObject({ wet: false, wetIfCulvert: true });
    const none = await trace({ ...RIVER, ...answered("no") });
    expect(none.structures[0]).toMatchObject({ wet: false, wetIfCulvert: false });
    expect(saysIf(none)).toEqual([]);
  });

  it("lets water over a ring at its top, not at the bank's, if there is one", async () => {
    const alignments = [ring(AROUND_BARN)];
    const {
      alternatives: [line],
    } = await trace({ ...RIVER, alignments });
    expect(line).toMatchObject({ dry: true, ifCulverts: { reaches: [] } });
    expect(line!.firstOver!.elevationM).toBeCloseTo(102, 2);
    expect(line!.ifCulverts!.elevationM).toBeCloseTo(101 + 0.3048, 3);
    expect(saysIf(line!)).toEqual(["let-in-if-culvert"]);
    expect(overtopsButForGap(line!, null, planWith(101), "metric", 0)).toBe(
      "overtops above 102.00 m, above 101.30 m if there is a culvert",
    );
    const none = await trace({ ...RIVER, ...answered("no"), alignments });
    expect(none.alternatives[0]!.ifCulverts).toBeNull();
  });

  it("lets the water past a line along the road, if there is one", async () => {
    const alignments = [
      openLine([
        [97, 0],
        [97, -120],
      ]),
    ];
    const {
      alternatives: [line],
    } = await trace({ ...RIVER, alignments });
    expect(line).toMatchObject({ dry: true, ifCulverts: { reaches: [BARN.id] } });
    expect(
      checkWords(line!.checks.find(({ id }) => id === "possible-culvert")!, "us").message,
    ).toBe(
      'If a pipe goes through a bank near the plan, the sized-for water reaches "Barn" with the levee built. Nobody has said that there is none.',
    );
  });
});

describe("a place where there may be a culvert", () => {
  it("is asked about with the traced water, and is no pipe", async () => {
    const traced = await trace({});
    expect(traced.pipes).toEqual([]);
    expect(traced.possibleCulverts).toMatchObject({ leftOff: 0, looked: true });
    expect(traced.possibleCulverts.found).toHaveLength(1);
    const check = traced.checks.find(({ id }) => id === "possible-culvert");
    expect(check).toMatchObject({ severity: "caution" });
    expect(checkWords(check!, "metric").message).toContain("1 place");
  });

  it("is not asked about where no water of the plan gets that high, or none is near the plan", async () => {
    const dry = await trace({}, 98);
    expect(dry.possibleCulverts.found).toEqual([]);
    const away = await trace({ structures: [] });
    expect(away.possibleCulverts.found).toEqual([]);
  });

  it("is not looked for on cells too large to show a bank", async () => {
    const coarse = byFormula(40, 40, (x) => (Math.abs(x - 200) < 6 ? 104 : 100), 10);
    const { possibleCulverts } = await traceWater(terrainOf(coarse, 10), {
      plan: planWith(101, { structures: [BARN] }),
    });
    expect(possibleCulverts).toEqual({ found: [], leftOff: 0, looked: false });
    expect(candidatesNote(possibleCulverts)).toContain("too coarse");
  });

  it("becomes a culvert of the plan by Yes: open, with the ground as its inverts", async () => {
    const [candidate] = (await trace({})).possibleCulverts.found;
    replacePlan(planWith(101, { structures: [BARN] }), "Open a plan");
    answerCandidate(candidate!.ends, "yes");
    const { culverts } = document.peek();
    expect(culverts).toMatchObject([{ invertsM: [null, null], plugged: false, gate: null }]);
    expect(document.peek().possibleCulverts).toBeUndefined();
    const traced = await trace({ culverts: culverts! });
    expect(traced.possibleCulverts.found).toEqual([]);
    expect(traced.pipes[0]).toMatchObject({ isKnown: true });
    expect(traced.pipes[0]!.passesAboveM).toBeCloseTo(candidate!.groundsM[0], 2);
  });

  it("is kept in the plan by No and Look, and stays an open check and a stop in print by Look alone", async () => {
    const [candidate] = (await trace({})).possibleCulverts.found;
    replacePlan(planWith(101, { structures: [BARN] }), "Open a plan");
    answerCandidate(candidate!.ends, "look");
    const kept = document.peek();
    expect(kept.possibleCulverts).toMatchObject([{ name: "Possible culvert 1", answer: "look" }]);
    const again = readPlanFile(writePlanFile(kept));
    expect(again.ok && again.value.plan.possibleCulverts).toEqual(kept.possibleCulverts);
    const looked = await trace({ possibleCulverts: kept.possibleCulverts! });
    expect(looked.possibleCulverts.found).toEqual([]);
    expect(looked.checks.map(({ id }) => id)).toContain("possible-culvert");
    expect(pipeStops(looked.checks).map(({ name }) => name)).toEqual(['"Possible culvert 1"']);

    changeAnswer(kept.possibleCulverts![0]!, "no");
    const none = await trace({ possibleCulverts: document.peek().possibleCulverts! });
    expect(none.checks.map(({ id }) => id)).not.toContain("possible-culvert");
    expect(pipeStops(none.checks)).toEqual([]);
    undo();
    changeAnswer(document.peek().possibleCulverts![0]!, "yes");
    expect(document.peek()).toMatchObject({ culverts: [{ name: "Culvert 1" }] });
    expect(document.peek().possibleCulverts).toBeUndefined();
  });

  it("is asked about again when its answer is taken back", () => {
    replacePlan(planWith(101, { structures: [BARN] }), "Open a plan");
    answerCandidate([at(90, 60), at(110, 60)], "no");
    takeBack(document.peek().possibleCulverts![0]!);
    expect(document.peek().possibleCulverts).toBeUndefined();
  });

  it("is said with what the elevation data shows", () => {
    const [candidate] = found(groundBy(withRoad));
    expect(candidateWords(candidate!, "us")).toMatch(
      /^A low place \d\.\d ft deep, a bank \d+\.\d ft high, and behind it, \d+ ft away, a channel .*\.$/,
    );
  });
});
