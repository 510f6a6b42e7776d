import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Alignment, LonLat, Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { planPlane } from "../../shared/plan-plane.ts";
import { sizeLine } from "../../shared/size-line.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { planFrames } from "../../src/pages/plan-frame.ts";
import { type PlacedWords, placeWords } from "../../src/pages/plan-labels.ts";
import { planLabels, stationsOn } from "../../src/pages/plan-marks.ts";
import { planRoom } from "../../src/pages/plan-room.ts";
import { type Corner, groundOf, PLANE, planWith, ring, structure } from "../helpers/grounds.ts";
import { said } from "../helpers/said.ts";
import { sample } from "../helpers/screen.ts";

/* What is written on the plan covers no building and nothing else, and lies outside the ring. */

type Spot = readonly [number, number];
type Pair = readonly [Spot, Spot];
interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const ROOM = { widthMm: 190.5, heightMm: 132 };
const ground = groundOf((x, y) => 99.4 + 0.3 * Math.sin(x / 40) * Math.cos(y / 30));

/** Sixteen corners close round three buildings: several only a few meters from the next. */
const CLOSE: readonly Corner[] = [
  ...([
    [-56.8, -41.7],
    [-24.8, -46.4],
    [-6.3, -42.4],
    [38.6, -14.1],
    [39.4, -12.4],
  ] as const),
  ...([
    [37.4, 3.2],
    [34.2, 7.9],
    [16.5, 11.1],
    [4.1, 37.7],
    [2.4, 38.3],
    [1.5, 38.5],
  ] as const),
  ...([
    [-39.2, 33],
    [-40.2, 32.5],
    [-51.3, 21.2],
    [-60.7, -0.1],
    [-58.5, -40.4],
  ] as const),
];
const HOUSE: readonly Corner[] = [
  ...([
    [-34.9, -23.5],
    [-15.2, -20.9],
    [-16.7, -8.9],
  ] as const),
  ...([
    [-25.7, -10.1],
    [-26.6, -3.2],
    [-37.5, -4.7],
  ] as const),
];
const BARN: readonly Corner[] = [
  [-35.8, 12.8],
  [3.8, 18.1],
  [1.5, 35],
  [-38, 29.7],
];
const SHED: readonly Corner[] = [
  [6.4, -15.9],
  [36.1, -11.9],
  [34.2, 2],
  [4.5, -2],
];
const closePlan: Plan = {
  ...planWith(100, { structures: [] }),
  structures: [structure("House", HOUSE), structure("Barn", BARN), structure("Shed", SHED)],
  alignments: [ring(CLOSE)],
};

const demo = readPlanFile(readFileSync(sample("demo.geojson"), "utf8"));
if (!demo.ok) throw new Error(said(demo.failure).message);
const demoPlan: Plan = {
  ...demo.value.plan,
  water: { ...demo.value.plan.water, by: "elevation", elevationM: 100 },
};

function laid(plan: Plan, alternative: Alignment, system: UnitSystem) {
  const plane = planPlane(alternative.corners[0]!);
  const line = sizeLine({ plan, alignment: alternative, plane, ground, live: false });
  const of: Exported = {
    ...{ plan, alternative, line, checks: line.checks, isTraced: true, system },
    verticalDatum: "NAVD 88",
  };
  return planFrames(plan, line, ROOM, system).map((frame) => {
    const labels = planLabels(of, frame);
    const placed = placeWords(labels, planRoom(of, frame), {
      ...{ left: 0, top: 0, right: frame.widthMm, bottom: frame.heightMm },
    });
    const stations = stationsOn({ plan, line, frame, system, side: -1 });
    return { frame, labels, placed, stations };
  });
}

const [demoRing] = demoPlan.alignments;
const closure = (fromM: number) => ({
  ...{ fromM, toM: fromM + 5, closeBy: { stageM: 9.1, at: null }, people: 10 },
});
const placesBy = (xM: number, yM: number): LonLat =>
  planPlane(demoRing!.corners[0]!).toLonLat(xM, yM) as LonLat;
/** All that may be named on it: two ways left open, a benchmark, a bag pile, pumps, trucks' way in. */
const crowdedRing: Alignment = { ...demoRing!, closures: [closure(20), closure(128)] };
const crowdedPlan: Plan = {
  ...demoPlan,
  alignments: [crowdedRing],
  survey: {
    benchmark: { name: "BM 1, brass cap, well pad", elevationM: 99.1, at: placesBy(33, 36) },
    ...{ backsightM: 1.234, readings: [] },
  },
  workPlaces: [
    { id: "p", name: "Bag pile 1", kind: "pile", path: [placesBy(23, 26)] },
    { id: "q", name: "Pumps 1", kind: "pumps", path: [placesBy(8, 53)] },
    {
      ...{ id: "t", name: "Truck way 1", kind: "truck-way" },
      path: [placesBy(93, -19), placesBy(43, 1), placesBy(33, 19)],
    },
  ],
};

const CASES = [
  ["a ring of sixteen corners close to three buildings", closePlan, closePlan.alignments[0]!],
  ["a ring with much beside it", crowdedPlan, crowdedRing],
  ...demoPlan.alignments.map((each) => [`the demo's line ${each.name}`, demoPlan, each] as const),
] as const;

describe.each(["us", "metric"] as const)("on the plan, %s,", (system) => {
  describe.each(CASES)("%s", (_, plan, alternative) => {
    const pages = laid(plan, alternative, system);

    it("has the height of every marked station and the number of every corner", () => {
      expect(pages.flatMap(({ stations }) => stations).length).toBeGreaterThan(12);
      for (const { labels, placed, stations } of pages) {
        const keys = new Set(placed.map(({ label }) => label.key));
        for (const { chainageM } of stations) expect(keys).toContain(`station ${chainageM}`);
        const wanted = labels.filter(({ key }) => /^(station|corner) /.test(key));
        expect(wanted.filter(({ key }) => !keys.has(key))).toEqual([]);
      }
    });

    it("has stations and corners off the buildings, and outside a ring", () => {
      for (const { frame, placed } of pages) {
        const buildings = plan.structures.map(({ outline }) => outline.map(frame.toSpot));
        const corners = alternative.corners.map(frame.toSpot);
        for (const { label, box } of placed.filter(ofTheLine)) {
          for (const spot of over(box)) {
            expect(
              buildings.some((each) => isIn(spot, each)),
              label.key,
            ).toBe(false);
            if (alternative.kind === "ring") expect(isIn(spot, corners), label.key).toBe(false);
          }
        }
      }
    });

    it("has no words over others, and no leader over words, buildings, leaders or the line", () => {
      for (const { frame, placed } of pages) {
        const corners = alternative.corners.map(frame.toSpot);
        const line = alternative.kind === "ring" ? [...corners, corners[0]!] : corners;
        const legs = line.slice(1).map((to, i): Pair => [line[i]!, to]);
        const walls = plan.structures.flatMap(({ outline }) => {
          const spots = outline.map(frame.toSpot);
          return spots.map((from, i): Pair => [from, spots[(i + 1) % spots.length]!]);
        });
        placed.forEach((each, i) => {
          for (const other of placed.slice(i + 1)) {
            expect(overlap(each.box, other.box), `${each.label.key}, ${other.label.key}`).toBe(
              false,
            );
          }
          if (!each.leader || !ofTheLine(each)) return;
          const leader = shortened(each.leader);
          const others = placed.filter((other) => other !== each);
          for (const { box } of others) expect(points(leader).some(inBox(box))).toBe(false);
          const pairs = others.flatMap(({ leader: other }) => (other ? [shortened(other)] : []));
          for (const pair of [...pairs, ...walls, ...legs]) expect(cross(leader, pair)).toBe(false);
        });
      }
    });
  });
});

describe.each(["us", "metric"] as const)("beside a line, %s,", (system) => {
  const [page] = laid(crowdedPlan, crowdedRing, system);

  it("every way left open and work place is named, and no leader runs through other words", () => {
    const { labels, placed } = page!;
    const wanted = labels.filter(({ hasLeader }) => hasLeader).map(({ key }) => key);
    expect(wanted.length).toBeGreaterThan(4);
    expect(placed.map(({ label }) => label.key)).toEqual(expect.arrayContaining(wanted));
    for (const each of placed.filter(({ leader }) => leader !== null)) {
      const leader = shortened(each.leader!);
      for (const other of placed.filter((one) => one !== each)) {
        const names = `${each.label.key} through ${other.label.key}`;
        expect(points(leader).some(inBox(other.box)), names).toBe(false);
        if (other.leader) expect(cross(leader, shortened(other.leader)), names).toBe(false);
      }
    }
  });

  it("has the buildings' names on their buildings", () => {
    const { frame, placed } = page!;
    for (const { id, outline } of crowdedPlan.structures) {
      const { box } = placed.find(({ label }) => label.key === `building ${id}`)!;
      const middle: Spot = [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
      const spots = outline.map(frame.toSpot);
      const away = spots.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1]));
      expect(isIn(middle, spots) || Math.min(...away) < 12, id).toBe(true);
    }
  });
});

describe.each(["us", "metric"] as const)("a drain in a house on a crowded plan, %s,", (system) => {
  it("has its name, led to it, where two more are in the yard", () => {
    const places = [
      [-27, -15],
      [-10, 0],
      [-30, 5],
    ] as const;
    const drains: Plan["drains"] = places.map(([x, y], k) => ({
      ...{ id: `${k}`, name: `Sink ${k}`, at: PLANE.toLonLat(x, y) },
      ...{ kind: "floor-drain", joinsOutside: true, plugged: false },
    }));
    const [page] = laid({ ...closePlan, drains }, closePlan.alignments[0]!, system);
    const { placed } = page!;
    const names = placed.filter(({ label }) => label.key.startsWith("drain "));
    expect(names).toHaveLength(3);
    for (const { box, label, leader } of names) {
      expect(leader, label.key).toBeTruthy();
      for (const other of placed.filter((each) => each.label !== label))
        expect(overlap(box, other.box), `${label.key}, ${other.label.key}`).toBe(false);
    }
  });
});

function ofTheLine({ label }: PlacedWords): boolean {
  return /^(station|corner) /.test(label.key);
}

function shortened([from, to]: Pair): Pair {
  const at = (share: number): Spot => [
    from[0] + (to[0] - from[0]) * share,
    from[1] + (to[1] - from[1]) * share,
  ];
  const mm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  return [at(0.6 / mm), at(1 - 0.05 / mm)];
}

function points([from, to]: Pair): Spot[] {
  return Array.from(
    { length: 40 },
    (_, i): Spot => [
      from[0] + ((to[0] - from[0]) * i) / 39,
      from[1] + ((to[1] - from[1]) * i) / 39,
    ],
  );
}

function over({ left, right, top, bottom }: Box): Spot[] {
  return Array.from(
    { length: 49 },
    (_, i): Spot => [
      left + ((right - left) * (i % 7)) / 6,
      top + ((bottom - top) * Math.floor(i / 7)) / 6,
    ],
  );
}

const inBox =
  ({ left, right, top, bottom }: Box) =>
  ([x, y]: Spot) =>
    x > left + 0.01 && x < right - 0.01 && y > top + 0.01 && y < bottom - 0.01;

function overlap(a: Box, b: Box): boolean {
  const width = Math.min(a.right, b.right) - Math.max(a.left, b.left);
  return width > 1e-6 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1e-6;
}

/** By the winding number, another rule than the one that places them. */
function isIn([x, y]: Spot, outline: readonly Spot[]): boolean {
  let turned = 0;
  outline.forEach(([ax, ay], i) => {
    const [bx, by] = outline[(i + 1) % outline.length]!;
    const from = Math.atan2(ay - y, ax - x);
    const to = Math.atan2(by - y, bx - x);
    turned += Math.atan2(Math.sin(to - from), Math.cos(to - from));
  });
  return Math.abs(turned) > Math.PI;
}

function cross([a, b]: Pair, [c, d]: Pair): boolean {
  const side = (p: Spot, q: Spot, r: Spot) =>
    Math.sign((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0]));
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}
