import { openAsBlob, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { afterEach, beforeAll, beforeEach, describe, expect, it, vi } from "vitest";
import { EMPTY_PLAN } from "../../shared/defaults.ts";
import type { GroundSummary } from "../../shared/messages.ts";
import type { LonLat, Plan } from "../../shared/plan.ts";
import { readPlanFile } from "../../shared/plan-file.ts";
import { notices } from "../../src/document/notices.ts";
import {
  apply,
  followUp,
  history,
  plan,
  redo,
  redoNote,
  startFrom,
  undo,
  undoNote,
} from "../../src/document/store.ts";
import { engine } from "../../src/engine.ts";
import { ground } from "../../src/live/ground.ts";
import { findRing, lookingFurther } from "../../src/live/search/find-ring.ts";
import { catchingUp, following, keepFollowing } from "../../src/live/search/follow.ts";
import { found } from "../../src/live/search/found.ts";
import { improveAlternative, improvedNow } from "../../src/live/search/improve.ts";
import { ringSettings } from "../../src/live/search/ring-settings.ts";
import { said } from "../helpers/said.ts";

vi.mock("../../src/engine.ts", async () => {
  const { makeEngine } = await import("../../workers/engine.ts");
  return { engine: makeEngine() };
});

const SAMPLES = fileURLToPath(new URL("../../sample-terrain/", import.meta.url));

let demo: Plan;
let stopFollowing = () => {};
beforeAll(async () => {
  const read = readPlanFile(readFileSync(`${SAMPLES}demo.geojson`, "utf8"));
  if (!read.ok) throw new Error(said(read.failure).message);
  demo = read.value.plan;
  const files = [{ name: "demo.tif", blob: await openAsBlob(`${SAMPLES}demo.tif`) }];
  ground.value = (await engine.openTerrain({ files, verticalUnit: null })) as GroundSummary;
  stopFollowing = keepFollowing();
  return () => stopFollowing();
});

beforeEach(() => {
  following.value = false;
  found.value = null;
  notices.value = [];
  startFrom({ plan: demo });
  const [, ...others] = demo.structures;
  ringSettings.value = { ...ringSettings.value, leftOut: others.map(({ id }) => id) };
});

afterEach(() => {
  following.value = false;
});

function setStage(byM: number, gesture?: string) {
  const stageM = demo.water.stageM + byM;
  return apply({
    note: "Move the stage",
    gesture,
    change: (now) => ({ ...now, water: { ...now.water, stageM } }),
  });
}

function foundCorners(): readonly LonLat[] {
  return plan.value.alignments.at(-1)!.corners;
}

/** Waits until nothing is searched for any more. */
async function atRest(): Promise<void> {
  await vi.waitFor(
    () => {
      if (lookingFurther.value || catchingUp.value) throw new Error("still searching");
    },
    { timeout: 50_000, interval: 20 },
  );
}

async function bagsOf(corners: readonly LonLat[]): Promise<number> {
  const alignment = { ...plan.value.alignments[0]!, id: "x", corners };
  const only = { ...plan.value, alignments: [alignment], chosenId: "x" };
  return (await engine.size({ plan: only, live: true })).lines[0]!.totals.bags;
}

describe("a step followed up", () => {
  it("stays one step: undo takes both back, redo does both again", () => {
    const start = plan.value;
    setStage(0.1);
    const outcome = followUp(start, (now) => ({ ...now, title: "Followed" }));
    expect(outcome).toEqual({ ok: true, value: true });
    const after = plan.value;
    expect(history.value.done).toHaveLength(1);
    undo();
    expect(plan.value).toBe(start);
    redo();
    expect(plan.value).toBe(after);
    expect(undoNote.value).toBe("Move the stage");
  });

  it("goes on being the same drag", () => {
    setStage(0.1, "drag");
    followUp(demo, (now) => ({ ...now, title: "Followed" }));
    setStage(0.2, "drag");
    expect(history.value.done).toHaveLength(1);
    expect(plan.value.title).toBe("Followed");
  });

  it("is left alone when another step was made, or it was taken back", () => {
    const start = plan.value;
    setStage(0.1);
    setStage(0.2);
    expect(followUp(start, () => EMPTY_PLAN)).toEqual({ ok: true, value: false });
    undo();
    undo();
    expect(followUp(start, () => EMPTY_PLAN)).toEqual({ ok: true, value: false });
    expect(redoNote.value).toBe("Move the stage");
  });

  it("refuses a plan that is not valid", () => {
    setStage(0.1);
    const outcome = followUp(demo, (now) => ({ ...now, title: "" }));
    expect(outcome).toMatchObject({ ok: false, failure: { code: "plan/invalid" } });
    expect(plan.value.title).toBe(demo.title);
  });
});

describe("finding the ring", () => {
  it("adds one chosen alternative as one step, judged afterwards, and undo takes it away", async () => {
    await findRing();
    await atRest();
    expect(plan.value.alignments).toHaveLength(4);
    const added = plan.value.alignments[3]!;
    expect(added).toMatchObject({ name: "Found ring", kind: "ring" });
    expect(plan.value.chosenId).toBe(added.id);
    expect(found.value).toMatchObject({ ids: [added.id], againstId: "a" });
    expect(found.value!.further!.lines[0]!.howGood!.kind).toBe("estimate");
    expect(found.value!.further!.cordons).toHaveLength(4);
    expect(history.value.done).toHaveLength(1);
    expect(undoNote.value).toBe("Find the ring");
    undo();
    expect(plan.value).toBe(demo);
  });

  it("again takes the place of the first, unless that was edited", async () => {
    await findRing();
    await atRest();
    setStage(0.3);
    await findRing();
    await atRest();
    expect(plan.value.alignments).toHaveLength(4);
    const edited = plan.value.alignments.map((each, k) =>
      k === 3 ? { ...each, corners: each.corners.slice(1) } : each,
    );
    apply({ note: "Edit", change: (now) => ({ ...now, alignments: edited }) });
    await findRing();
    await atRest();
    expect(plan.value.alignments.map(({ name }) => name).slice(3)).toEqual([
      "Found ring",
      "Found ring 2",
    ]);
  });

  it("says in words why there is none, and changes nothing", async () => {
    const wall = { id: "w", name: "Wall", outline: demo.structures[0]!.outline };
    const grown = wall.outline.map(
      ([lon, lat]): LonLat => [-93.9755 + 40 * (lon + 93.9755), 42.9913 + 40 * (lat - 42.9913)],
    );
    startFrom({ plan: { ...demo, noGo: [{ ...wall, outline: grown }] } });
    const before = plan.value;
    await findRing();
    expect(plan.value).toBe(before);
    expect(notices.value).toHaveLength(1);
    expect(notices.value[0]!.failure.code).toMatch(/^site\//);
  });
});

describe("following the stage", () => {
  it("searches again within the same step, so that undo takes both back and redo does both", async () => {
    await findRing();
    await atRest();
    const first = plan.value;
    following.value = true;
    for (const byM of [0.05, 0.1, 0.15, 0.2]) {
      setStage(byM, "drag");
      await new Promise((done) => setTimeout(done, 30));
    }
    await atRest();
    const steps = history.value.done.length;
    expect(foundCorners()).not.toEqual(first.alignments.at(-1)!.corners);
    expect(steps).toBe(2);
    const followed = await bagsOf(foundCorners());
    expect(followed).toBeLessThanOrEqual(await bagsOf(first.alignments.at(-1)!.corners));
    const last = plan.value;
    undo();
    await atRest();
    expect(plan.value).toBe(first);
    redo();
    await atRest();
    expect(plan.value).toBe(last);
    expect(following.value).toBe(true);
  });

  it("ends when the line is edited by hand, and leaves the edit alone", async () => {
    await findRing();
    await atRest();
    following.value = true;
    const edited = plan.value.alignments.map((each, k) =>
      k === 3 ? { ...each, corners: each.corners.slice(1) } : each,
    );
    apply({ note: "Edit", change: (now) => ({ ...now, alignments: edited }) });
    setStage(0.1);
    await atRest();
    expect(following.value).toBe(false);
    expect(foundCorners()).toEqual(edited[3]!.corners);
  });
});

describe("improving a line", () => {
  it("is one step that keeps its name and its pins", async () => {
    const pinned = { ...demo.alignments[0]!, pinned: [2] };
    startFrom({ plan: { ...demo, alignments: [pinned], chosenId: "a" } });
    await improveAlternative(plan.value.alignments[0]!);
    const [line] = plan.value.alignments;
    expect(undoNote.value).toBe("Improve Drawn ring");
    expect(line!.pinned!.map((k) => line!.corners[k])).toEqual([pinned.corners[2]]);
    const { before, after } = improvedNow(line!, plan.value)!;
    expect(after.bags).toBeLessThan(before.bags);
    undo();
    expect(plan.value.alignments[0]).toBe(pinned);
  });

  it("improved again, saves against the line as drawn, at the stage of the day", async () => {
    const drawn = { ...demo.alignments[0]!, pinned: [2] };
    startFrom({ plan: { ...demo, alignments: [drawn], chosenId: "a" } });
    const line = () => plan.value.alignments[0]!;
    const note = () => improvedNow(line(), plan.value);
    await improveAlternative(line());
    const first = note()!;
    expect(first.before.bags).toBe(await bagsOf(drawn.corners));

    const { pinned: _, ...unpinned } = line();
    apply({ note: "Unpin", change: (now) => ({ ...now, alignments: [unpinned] }) });
    await improveAlternative(line());
    expect(note()!.after.bags).toBeLessThan(first.after.bags);
    expect(note()!.before.bags).toBe(first.before.bags);
    undo();
    expect(note()).toBe(first);

    setStage(-0.3);
    expect(note()).toBeNull();
    await improveAlternative(line());
    expect(note()!.before.bags).toBe(await bagsOf(drawn.corners));
    expect(note()!.before.bags).toBeLessThan(first.before.bags);
  });
});
