import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import { Refusal, refusal } from "../../shared/failure.ts";
import type { GroundSummary, OpenTerrainRequest } from "../../shared/messages.ts";
import { notices } from "../../src/document/notices.ts";
import { plan, redo, startFrom, undo, undoNote } from "../../src/document/store.ts";
import { openDemo, startDemo } from "../../src/live/demo.ts";
import { DEMO_SITES, example, planOfSite } from "../../src/live/demo-sites.ts";
import { ground, groundFailure, openFiles, unitQuestion } from "../../src/live/ground.ts";
import { keepGroundOfPlan } from "../../src/live/ground-of-plan.ts";
import { startNewPlan } from "../../src/live/new-plan.ts";
import { openTerrainFiles, openTerrainOfPlan } from "../../src/live/open-ground.ts";
import { steps } from "../../src/live/steps.ts";
import { said } from "../helpers/said.ts";

/** Answers the opening that is under way, as the test decides. */
let answer: (summary: GroundSummary | Refusal) => void = () => {};
/** Names of the files that are being opened. */
let opening: string[] = [];
vi.mock("../../src/engine.ts", () => ({
  engine: {
    openTerrain: ({ files }: OpenTerrainRequest, { signal }: { readonly signal: AbortSignal }) =>
      new Promise((resolve, reject) => {
        signal.addEventListener("abort", () => reject(refusal("cancelled", { overtaken: false })));
        opening = files.map((each) => each.name);
        answer = (came) => (came instanceof Refusal ? reject(came) : resolve(came));
      }),
    heightRange: async () => null,
  },
}));
vi.mock("../../src/document/autosave.ts", () => ({ storeTerrain: async () => {} }));

const site = DEMO_SITES[0];
const finished = planOfSite(site);
if (!finished.ok) throw new Error(said(finished.failure).message);
const demo = finished.value.plan;
const [{ name, bytes }] = demo.terrain as [(typeof demo.terrain)[number]];
const file = new File([new Uint8Array(bytes)], name);

const tilted = planOfSite(DEMO_SITES[1]);
if (!tilted.ok) throw new Error(said(tilted.failure).message);
const [tiltedFile] = tilted.value.plan.terrain;

function summaryOf(west: number, { name, bytes } = demo.terrain[0]!): GroundSummary {
  return {
    ...{ name, files: [{ name, bytes, format: "GeoTIFF" }], columns: 10, rows: 10 },
    ...{ bounds: [west, 42.98, west + 0.02, 43], cellXM: 1, cellYM: 1, crs: "EPSG:26915" },
    ...{ corners: [], crsNote: null, verticalDatum: null, lowestM: 260, highestM: 270 },
    ...{ verticalUnit: "metre", verticalUnitFrom: "file", holeShare: 0, fromOverview: false },
    ...{ notes: [], marks: [], marksAsked: [] },
  } as unknown as GroundSummary;
}

beforeEach(() => {
  opening = [];
  ground.value = null;
  groundFailure.value = null;
  openFiles.value = [];
  unitQuestion.value = null;
  notices.value = [];
  startFrom({ plan: demo });
});

describe("the elevation data of the example", () => {
  it("is no step of undo when it comes", async () => {
    const opening = openTerrainFiles([file]);
    answer(summaryOf(-93.98));
    await opening;
    expect(ground.value?.name).toBe(name);
    expect(undoNote.value).toBe(null);
    expect(example.value).toBe(site);
  });

  it("is not put into a new plan that was started while it was read", async () => {
    const opening = openTerrainOfPlan([file]);
    startNewPlan();
    answer(summaryOf(-93.98));
    await opening;
    expect(plan.value.terrain).toEqual([]);
    expect(undoNote.value).toBe("Start a new plan");
    expect(example.value).toBe(null);
  });

  it("says in a notice why it cannot be opened: the first steps are not on screen then", async () => {
    const opening = openTerrainFiles([file]);
    answer(refusal("raster/empty", { name: "own.tif" }));
    await opening;
    expect(notices.value.map(({ failure }) => failure.code)).toEqual(["raster/empty"]);
    startFrom({ plan: EMPTY_PLAN });
    const own = openTerrainFiles([file]);
    answer(refusal("raster/no-place", { name: "own.tif" }));
    await own;
    expect(groundFailure.value?.code).toBe("raster/no-place");
  });
});

describe("elevation data that are taken back while they are read", () => {
  const ownFile = new File([new Uint8Array(9)], "county.tif");
  const own = { name: ownFile.name, bytes: ownFile.size };
  beforeEach(() => {
    const bytesOf = (url: string) => (url === DEMO_SITES[1].raster ? tiltedFile!.bytes : bytes);
    const fetched = async (url: string) => ({
      blob: async () => new Blob([new Uint8Array(bytesOf(url))]),
    });
    vi.stubGlobal("fetch", fetched);
  });
  afterEach(() => vi.unstubAllGlobals());

  it.each([
    ["the example from before", demo, demo.terrain[0]!, file],
    ["a plan of one's own", { ...demo, terrain: [own] }, own, ownFile],
  ])("leaves %s on its own elevation data", async (_, before, terrain, open) => {
    startFrom({ plan: before });
    ground.value = summaryOf(-93.98, terrain);
    openFiles.value = [open];
    const stop = keepGroundOfPlan();
    const example = openDemo("tilted");
    await vi.waitUntil(() => opening.includes("tilted.tif"));
    undo();
    answer(summaryOf(-90, tiltedFile));
    await example;
    await vi.waitUntil(() => opening.includes(terrain.name), { timeout: 2000 });
    answer(summaryOf(-93.98, terrain));
    await vi.waitUntil(() => ground.value?.name === terrain.name, { timeout: 2000 });
    expect(plan.value.terrain).toEqual(before.terrain);
    stop();
  });

  it("puts no plan of its own in place of the example, where it is ground of one's own", async () => {
    ground.value = summaryOf(-93.98);
    openFiles.value = [file];
    const stop = keepGroundOfPlan();
    const opened = openTerrainFiles([ownFile]);
    answer(summaryOf(-90, own));
    await opened;
    undo();
    await vi.waitUntil(() => opening.includes(name));
    answer(summaryOf(-93.98));
    await vi.waitUntil(() => ground.value?.name === name);
    redo();
    await vi.waitUntil(() => opening.includes(own.name));
    undo();
    answer(summaryOf(-90, own));
    await vi.waitUntil(() => opening.includes(name));
    answer(summaryOf(-93.98));
    await vi.waitUntil(() => ground.value?.name === name, { timeout: 2000 });
    expect(plan.value).toEqual(demo);
    stop();
  });
});

describe("elevation data opened before those of the example have come", () => {
  const ownFile = new File([new Uint8Array(9)], "county.tif");
  let arrive: () => void = () => {};
  beforeEach(() => {
    const arrived = new Promise<void>((resolve) => {
      arrive = resolve;
    });
    vi.stubGlobal("fetch", async () => {
      await arrived;
      return { blob: async () => new Blob([new Uint8Array(bytes)]) };
    });
  });
  afterEach(() => vi.unstubAllGlobals());

  it.each([
    ["before they come", true],
    ["after they come", false],
  ])("keep the question for their unit, %s", async (_, isBefore) => {
    const begun = startDemo()();
    const own = openTerrainFiles([ownFile]);
    if (!isBefore) arrive();
    await new Promise((resolve) => setTimeout(resolve));
    expect(opening).toEqual(["county.tif"]);
    answer(refusal("ground/unit-unknown", { name: "county.tif" }));
    await own;
    arrive();
    await vi.waitUntil(() => opening.includes(name), { timeout: 2000 });
    answer(summaryOf(-93.98));
    await begun;
    expect(ground.value?.name).toBe(name);
    expect(unitQuestion.value?.files).toEqual([ownFile]);
  });

  it("leave the example's under it where they cannot be read", async () => {
    const begun = startDemo()();
    arrive();
    await vi.waitUntil(() => opening.includes(name), { timeout: 2000 });
    const own = openTerrainFiles([ownFile]);
    expect(opening).toEqual(["county.tif"]);
    answer(refusal("raster/empty", { name: "own.tif" }));
    await own;
    await vi.waitUntil(() => opening.includes(name), { timeout: 2000 });
    answer(summaryOf(-93.98));
    await begun;
    expect(ground.value?.name).toBe(name);
    expect(notices.value.map(({ failure }) => failure.code)).toEqual(["raster/empty"]);
  });
});

describe("the first step", () => {
  const isGroundDone = () => steps.value.find(({ key }) => key === "ground")?.isDone;

  it("is not done by elevation data of another place than the plan's", () => {
    ground.value = summaryOf(-93.98);
    expect(isGroundDone()).toBe(true);
    ground.value = summaryOf(-90);
    expect(isGroundDone()).toBe(false);
  });
});
