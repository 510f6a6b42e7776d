import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Building } from "../../shared/buildings/types.ts";
import { Refusal } from "../../shared/failure.ts";
import type { Alignment, LonLat } from "../../shared/plan.ts";
import { writePlanFile } from "../../shared/plan-file.ts";
import { readResumed } from "../../workers/command/sweep-resume.ts";
import { stagesFrom } from "../../workers/command/sweep-stages.ts";
import { stockFrom } from "../../workers/command/sweep-stock.ts";
import { buildingAt, outlineAt, placeOf, townPlan, townRaster } from "../helpers/sweep-town.ts";
import { drystead, type Ended } from "../helpers/terminal.ts";

const folder = mkdtempSync(join(tmpdir(), "drystead-sweep-"));
const at = (name: string) => join(folder, name);
const written = (name: string, content: string | Uint8Array) => {
  writeFileSync(at(name), content);
  return at(name);
};

/** A plain that falls to the north, with long waves, a hole in the east, and two houses side by side. */
const heightAt = (x: number, y: number) =>
  x > 110 && y > 0 ? Number.NaN : 100 + 0.002 * y + 0.15 * Math.sin(x / 23) * Math.cos(y / 17);
const WATER_M = 100.5;
const BUILDINGS: readonly Building[] = [
  buildingAt("west", -60, 0),
  buildingAt("left", 10, 0, 10, 10),
  buildingAt("right", 24, 0, 10, 10),
  buildingAt("hole", 108, 40),
];
const YARD: Building = {
  ...buildingAt("yard", -60, -70, 8, 8),
  parts: [outlineAt(-60, -70, 8, 8), outlineAt(-46, -70, 6, 6)],
};
const ALL = [...BUILDINGS, YARD];

function footprints(buildings: readonly Building[]): string {
  const closed = (outline: readonly LonLat[]) => [...outline, outline[0]!];
  const features = buildings.map(({ id, name, parts }) => ({
    ...{ type: "Feature", id, properties: { name, rank: id === "west" ? "first" : "" } },
    geometry: { type: "MultiPolygon", coordinates: parts.map((each) => [closed(each)]) },
  }));
  return JSON.stringify({ type: "FeatureCollection", features: [...features, again(features)] });
}

/** The first feature once more, without its id. */
function again([first]: readonly object[]): object {
  return { ...first, id: undefined };
}

const plan = townPlan(WATER_M);
let words: string[];
let whole: Ended;
beforeAll(async () => {
  words = [
    ...["sweep", written("plan.geojson", writePlanFile(plan))],
    ...["--buildings", written("town.geojson", footprints(ALL))],
    ...["--terrain", written("town.tif", townRaster(300, heightAt)), "--vertical-unit", "m"],
    ...["--stages", "100.5:100.9:0.2", "--units", "metric", "--priority-column", "rank"],
    ...["--stock", written("stock.json", '{"bags": 20000, "people": 60}')],
  ];
  whole = await drystead([...words, "--workers", "2"]);
}, 120_000);
afterAll(() => rmSync(folder, { recursive: true }));

function linesOf({ out }: Ended) {
  const texts = out.split("\n").filter((text) => text !== "");
  const values = texts.map((text) => JSON.parse(text));
  return {
    texts,
    buildings: values.filter((each) => "id" in each),
    groups: values.filter((each) => "group" in each),
    choice: values.find((each) => "choice" in each)?.choice,
  };
}

describe("sweep", () => {
  it("answers every building once, then groups, then the choice", () => {
    expect(whole.code).toBe(0);
    expect(whole.said).toContain("5 of 5 buildings checked.");
    expect(whole.said).toContain("Note: 1 outline repeats another and is left out: 6 (as west).");
    expect(whole.said).toContain("Note: 1 building has several parts; one line goes around");
    const { texts, buildings, groups, choice } = linesOf(whole);
    expect(texts).toHaveLength(buildings.length + groups.length + 1);
    expect(buildings.map(({ id }) => id).sort()).toEqual(["hole", "left", "right", "west", "yard"]);
    const states = Object.fromEntries(buildings.map(({ id, state }) => [id, state]));
    expect(states).toEqual({
      ...{ west: "can-be-ringed", left: "can-be-ringed", right: "can-be-ringed" },
      ...{ yard: "can-be-ringed", hole: "no-data" },
    });
    expect(Object.keys(choice)).toEqual(
      expect.arrayContaining(["chosen", "weight", "bags", "bestPossible", "runsOutFirst"]),
    );
    expect(choice.chosen).toContain("west");
  });

  it("rings two houses side by side with fewer bags than one by one", () => {
    const { buildings, groups } = linesOf(whole);
    const own = buildings.filter(({ id }) => id === "left" || id === "right");
    const [group] = groups;
    expect(groups).toHaveLength(1);
    expect(group.members).toEqual(["left", "right"]);
    expect(group.bags).toBeLessThan(own[0].bags + own[1].bags);
  });

  it("sizes each ring as the verb size does, at every stage", async () => {
    const { buildings, groups } = linesOf(whole);
    const ringed = [...buildings, ...groups].filter(({ kind }) => kind === "ring");
    expect(ringed).toHaveLength(5);
    for (const waterM of [WATER_M, WATER_M + 0.4]) {
      const alignments = ringed.map((each, k): Alignment => {
        const corners = each.coordinates;
        return { id: `r${k}`, name: `R${k}`, kind: "ring", corners, reachBreaksM: [] };
      });
      for (const [k, alignment] of alignments.entries()) {
        const own = { ...townPlan(waterM), alignments: [alignment] };
        const file = written("own.geojson", writePlanFile(own));
        const sized = await drystead([
          "size",
          file,
          "--terrain",
          at("town.tif"),
          "--vertical-unit",
          "m",
        ]);
        const [{ totals, bagOrder }] = JSON.parse(sized.out).alternatives;
        const found = ringed[k].byStage.find(
          (each: { atGaugeM: number }) => Math.abs(each.atGaugeM - waterM) < 1e-6,
        );
        const figures = waterM === WATER_M ? ringed[k] : found;
        expect(figures.bags).toBe(bagOrder.total);
        expect(figures.leveeBags).toBe(totals.bags);
        expect(figures).toMatchObject({
          sandM3: totals.sandM3,
          sheetM2: totals.sheetM2,
          personHours: totals.jobPersonHours,
          greatestHeightM: totals.greatestHeightM,
          lengthM: totals.lengthM,
          lengthOverLimitM: totals.lengthOverLimitM,
        });
      }
    }
  }, 60_000);

  it("goes on where it stopped: the same lines as in one go, whatever the order and however many workers", async () => {
    const { texts } = linesOf(whole);
    const cut = `${texts.slice(0, 2).join("\n")}\n${texts[2]!.slice(0, 40)}`;
    const resumed = await drystead([
      ...words,
      "--workers",
      "1",
      "--resume",
      written("cut.jsonl", cut),
    ]);
    expect(resumed.said).toContain("2 buildings are answered already.");
    expect(linesOf(resumed).texts.sort()).toEqual([...texts].sort());
  }, 60_000);

  it("takes no answers of another check, and says in what it differs", async () => {
    const former = written("former.jsonl", whole.out);
    const with_ = (name: string, value: string) =>
      words.map((word, k) => (words[k - 1] === name ? value : word));
    const other = async (asked: readonly string[], differs: string) => {
      const refused = await drystead([...asked, "--resume", former]);
      expect(refused).toMatchObject({ code: 1, out: "" });
      expect(refused.said).toContain("(sweep/other-check)");
      expect(refused.said).toContain(`These differ: ${differs}.`);
    };
    await other(with_("--stages", "100.5:100.7:0.2"), "the stages");
    await other([...words, "--most-people", "30"], "the most people on one line");
    const crew = { ...plan, practice: { ...plan.practice, people: 30 } };
    const moved = written("crew.geojson", writePlanFile(crew));
    const ofPlan = "the plan (its water, levee type, crew, forecast, or no-go areas)";
    await other([words[0]!, moved, ...words.slice(2)], ofPlan);
    const fewer = with_("--buildings", written("fewer.geojson", footprints(BUILDINGS)));
    await other([...fewer, "--most-people", "30"], "the buildings and the most people on one line");
    const broken = written("broken.jsonl", `not a line\n${whole.out}`);
    expect((await drystead([...words, "--resume", broken])).said).toContain("sweep/bad-line");
  }, 60_000);

  it("goes on from several runs in one file, one of them cut off in a line", async () => {
    const { texts } = linesOf(whole);
    const twice = [texts[0], texts[1], texts[0], texts[2]!.slice(0, 40)].join("\n");
    const file = written("twice.jsonl", twice);
    const { check } = JSON.parse(texts[0]!);
    const { known, ...rest } = await readResumed(file, check);
    expect(new Set(known.map(({ id }) => id)).size).toBe(known.length);
    expect(rest).toEqual({ cutOff: 1, repeated: 1 });
    await expect(readResumed(at("no.jsonl"), check)).rejects.toMatchObject({
      code: "sweep/no-file",
    });
  });

  it("refuses footprints of another place and a column that is not there", async () => {
    const far = {
      ...buildingAt("far", 0, 0),
      parts: [[placeOf(9000, 0), placeOf(9010, 0), placeOf(9005, 9)]],
    };
    const with_ = (name: string, value: string) =>
      words.map((word, k) => (words[k - 1] === name ? value : word));
    const elsewhere = await drystead(
      with_("--buildings", written("far.geojson", footprints([far]))),
    );
    expect(elsewhere).toMatchObject({ code: 1 });
    expect(elsewhere.said).toContain("footprints/elsewhere");
    const column = await drystead([...words, "--floor-column", "storeys"]);
    expect(column.said).toContain("buildings/no-column");
  });
});

describe("a stock file", () => {
  it("may leave parts out, which are then not limited", () => {
    expect(stockFrom("s", '{"bags": 5, "mustDo": [7]}')).toEqual({
      ...{ bags: 5, sandM3: null, sheetM2: null, people: null, mustDo: ["7"], mustNot: [] },
    });
  });

  it.each([
    ["text", "no json"],
    ["a list", "[]"],
    ["a part that is not known", '{"sacks": 5}'],
    ["fewer than no bags", '{"bags": -1}'],
    ["bags in words", '{"bags": "many"}'],
    ["an id alone", '{"mustDo": "a"}'],
    ["a building in both lists", '{"mustDo": ["a"], "mustNot": ["a"]}'],
  ])("is refused with %s", (_, text) => {
    expect(() => stockFrom("s", text)).toThrow(Refusal);
  });
});

describe("stages", () => {
  it("run from the first to the last in steps, in feet or meters", () => {
    expect(stagesFrom("28:29:0.5", "us")).toEqual([28 * 0.3048, 28.5 * 0.3048, 29 * 0.3048]);
    expect(stagesFrom("1:1.3:0.1", "metric")).toHaveLength(4);
    for (const word of ["28", "29:28:1", "1:2:0", "1:2", "a:b:c", "0:1000:0.01"]) {
      expect(() => stagesFrom(word, "us")).toThrow(/--stages/);
    }
  });
});
