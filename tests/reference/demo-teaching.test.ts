import { beforeAll, describe, expect, it } from "vitest";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { drystead } from "../helpers/terminal.ts";

/*
 * The two teaching grids, by hand. Section of base 3 h and crown w = 0.75 ft = 0.2286 m (NDSU-11) on
 * ground level across: A(h) = (3 h^2 + w h) / 2 where 3 h > w, and w h below.
 * Along a leg where h goes evenly from a to b: volume = length * (F(b) - F(a)) / (b - a), F the integral
 * of A: F(h) = h^3 / 2 + w h^2 / 4 (+ w^3 / 108 from the part below w / 3).
 * Where the ground falls by s across the line the section of side slope n = (3 h - w) / (2 h) per metre of
 * height is two triangles that share the apex H = h + w / (2 n), less the cap above the crown:
 * A = n H^2 / (1 - n^2 s^2) - w^2 / (4 n).
 */
const CROWN = 0.2286;

function level(h: number): number {
  return 3 * h > CROWN ? (3 * h * h + CROWN * h) / 2 : CROWN * h;
}

function falling(h: number, s: number): number {
  const n = (3 * h - CROWN) / (2 * h);
  const apex = h + CROWN / (2 * n);
  return (n * apex * apex) / (1 - (n * s) ** 2) - CROWN ** 2 / (4 * n);
}

function integral(h: number): number {
  const low = CROWN / 3;
  if (h <= low) return (CROWN * h * h) / 2;
  const above = (x: number) => x ** 3 / 2 + (CROWN * x * x) / 4;
  return (CROWN * low * low) / 2 + above(h) - above(low);
}

function along(length: number, from: number, to: number): number {
  return (length * (integral(to) - integral(from))) / (to - from);
}

async function sized(site: string): Promise<SizedLine[]> {
  const files = [`sample-terrain/${site}.geojson`, "--terrain", `sample-terrain/${site}.tif`];
  const { out } = await drystead(["size", ...files]);
  return JSON.parse(out).alternatives;
}

function within(actual: number, expected: number, share: number): void {
  expect(Math.abs(actual / expected - 1)).toBeLessThan(share);
}

it("the hand formulas agree with each other where the ground is level", () => {
  expect(falling(1.1, 0)).toBeCloseTo(level(1.1), 12);
});

describe("tilted plane: 1 in 100, crest at 102 m", () => {
  let ring: SizedLine;
  let line: SizedLine;
  beforeAll(async () => {
    [ring, line] = (await sized("tilted")) as [SizedLine, SizedLine];
  });

  it("ring of 80 x 40 m between heights of 1.4 and 0.6 m", () => {
    const sides = 2 * along(80, 1.4, 0.6);
    const ends = 40 * (falling(1.4, 0.01) + falling(0.6, 0.01));
    within(ring.totals.volumeM3, sides + ends, 0.001);
    within(ring.totals.lengthM, 240, 0.0001);
    expect(ring.enclosedM2).toBeCloseTo(3200, 0);
  });

  it("greatest height is at the low end, under the outer toe", () => {
    const n = (3 * 1.4 - CROWN) / 2.8;
    const toe = (n * 1.4 + CROWN / 2) / (1 - n * 0.01);
    expect(ring.totals.greatestHeightM).toBeCloseTo(1.4 + 0.01 * toe, 2);
  });

  it("over the limit of 4 ft: both ends of the sides, and the west end", () => {
    const sides = 2 * ((1.4 - 1.2192) / 0.01);
    within(ring.totals.lengthOverLimitM, 40 + sides, 0.02);
  });

  it("the open line runs out on the slope", () => {
    within(line.totals.volumeM3, 2 * along(140, 1.4, 0) + 40 * falling(1.4, 0.01), 0.001);
    within(line.totals.builtLengthM, 320, 0.005);
    expect(line.stations[0]?.heightM).toBe(0);
    expect(line.stations.at(-1)?.heightM).toBe(0);
  });
});

describe("step of 0.6 m, crest 1.2 m above the low ground", () => {
  let low: SizedLine;
  let over: SizedLine;
  beforeAll(async () => {
    [low, over] = (await sized("stepped")) as [SizedLine, SizedLine];
  });

  it("ring on the low ground: 144 m at 1.2 m", () => {
    within(low.totals.volumeM3, 144 * level(1.2), 0.001);
    expect(low.totals.greatestHeightM).toBeCloseTo(1.2, 3);
  });

  it("ring over the step: four legs, the step itself a ramp of one cell", () => {
    const across = 31.5 * level(1.2) + along(1, 1.2, 0.6) + 3.5 * level(0.6);
    within(over.totals.volumeM3, 44 * level(1.2) + 2 * across + 44 * level(0.6), 0.002);
  });

  it("sixteen metres more of line need 15 % fewer bags", () => {
    expect(over.totals.lengthM - low.totals.lengthM).toBeCloseTo(16, 1);
    expect(over.totals.bags / low.totals.bags).toBeCloseTo(0.845, 2);
  });
});
