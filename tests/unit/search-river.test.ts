import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { booleanPointInPolygon, polygon } from "@turf/turf";
import proj4 from "proj4";
import { describe, expect, it } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { makeEngine } from "../../workers/engine.ts";

const PRJ = readFileSync(
  fileURLToPath(new URL("../fixtures/rasters/ascii.prj", import.meta.url)),
  "utf8",
);
const utm = proj4("+proj=utm +zone=15 +datum=WGS84 +units=m +no_defs", "+proj=longlat");
const CELLS = 160;
const [EAST, NORTH] = [482_000, 4_983_000];
/** Crest 1 m over the plain, the bank above it. */
const [PLAIN_M, CREST_M, BANK_M] = [100, 101, 101.4];
const POND = { x: 18, y: 0, radius: 4 } as const;

function placeOf(x: number, y: number): LonLat {
  const [lon, lat] = utm.forward([EAST + CELLS / 2 + x, NORTH + CELLS / 2 + y]);
  return [lon!, lat!];
}

/** A plain inside a round bank with a gap to the west, and a pond within it to the east. */
function heightAt(x: number, y: number): number {
  if (Math.hypot(x - POND.x, y - POND.y) < POND.radius) return PLAIN_M - 1.5;
  const away = Math.hypot(x, y);
  const isBank = away > 30 && away < 50 && !(x < 0 && Math.abs(y) < 5);
  return isBank ? BANK_M : PLAIN_M;
}

function grid(): string {
  const rows = Array.from({ length: CELLS }, (_, row) =>
    Array.from({ length: CELLS }, (_, column) =>
      heightAt(column + 0.5 - CELLS / 2, CELLS / 2 - row - 0.5).toFixed(2),
    ).join(" "),
  );
  const head = `ncols ${CELLS}\nnrows ${CELLS}\nxllcorner ${EAST}\nyllcorner ${NORTH}\ncellsize 1\n`;
  return `${head}${rows.join("\n")}\n`;
}

const PLAN: Plan = {
  ...EMPTY_PLAN,
  structures: [
    {
      ...{ id: "house", name: "House", floorM: null },
      outline: [placeOf(-4, -4), placeOf(4, -4), placeOf(4, 4), placeOf(-4, 4)],
    },
  ],
  water: { ...EMPTY_PLAN.water, elevationM: CREST_M - EMPTY_PLAN.water.freeboardM },
};

async function found(sources: Plan["sources"]) {
  const engine = makeEngine();
  const files = [
    { name: "dem.asc", blob: new Blob([grid()]) },
    { name: "dem.prj", blob: new Blob([PRJ]) },
  ];
  await engine.openTerrain({ files, verticalUnit: "metre" });
  const { lines } = await engine.findRing({
    plan: sources ? { ...PLAN, sources } : PLAN,
    window: { reachM: 60 },
    timeCapMs: 60_000,
  });
  const line = lines[0]!;
  const path = line.kind === "ring" ? line.corners : [...line.corners, ...line.free.flat()];
  const isEnclosed = booleanPointInPolygon(
    placeOf(POND.x, POND.y) as [number, number],
    polygon([[...path, path[0]!].map(([lon, lat]) => [lon, lat])]),
  );
  return { line, isEnclosed };
}

describe("water that stands there always", () => {
  it("is enclosed as ground like any other while nobody has marked it", async () => {
    const { line, isEnclosed } = await found(undefined);
    expect(isEnclosed).toBe(true);
    expect(line.free.length).toBeGreaterThan(0);
    expect(line.totals.builtLengthM).toBeLessThan(16);
  });

  it("is left outside once it is marked, although that needs more bags", async () => {
    const unmarked = await found(undefined);
    const at = placeOf(POND.x, POND.y);
    const { line, isEnclosed } = await found([{ id: "pond", name: "Pond", at }]);
    expect(isEnclosed).toBe(false);
    expect(line.encloses).toEqual(["house"]);
    expect(line.totals.bags).toBeGreaterThan(unmarked.line.totals.bags);
  });
});
