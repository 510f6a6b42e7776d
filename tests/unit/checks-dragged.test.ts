import { describe, expect, it } from "vitest";
import { checksWhileDragged, RULES } from "../../shared/checks.ts";
import { FOOT_M } from "../../shared/constants.ts";
import { DEFAULT_HOLDING } from "../../shared/defaults.ts";
import { sizeLine } from "../../shared/size-line.ts";
import { flat, openLine, PLANE, planWith } from "../helpers/grounds.ts";

const plan = planWith(100 + 3 * FOOT_M, {
  holding: { ...DEFAULT_HOLDING, frictionLow: 0.1, frictionHigh: 0.12 },
});
const sized = (lengthM: number, live: boolean) =>
  sizeLine({
    plan,
    alignment: openLine([
      [0, 0],
      [lengthM, 0],
    ]),
    plane: PLANE,
    ground: flat(100),
    live,
  });
const sliding = (checks: readonly { readonly id: string }[]) =>
  checks.filter(({ id }) => id === "sliding");

describe("checks while a line is dragged", () => {
  const atRest = sized(60, false).checks;

  it("keep what was found only at rest, and take everything else from the line as it is", () => {
    const live = sized(61, true);
    expect(sliding(atRest)).toHaveLength(1);
    expect(sliding(live.checks)).toEqual([]);
    const kept = checksWhileDragged(live.checks, atRest, live.totals.lengthM);
    expect(sliding(kept)).toEqual(sliding(atRest));
    const bothWays = kept.filter(({ id }) => live.checks.some((each) => each.id === id));
    expect(bothWays).toEqual(live.checks);
  });

  it("drop a stretch that lies past the end of the line", () => {
    const live = sized(30, true);
    const kept = checksWhileDragged(live.checks, atRest, live.totals.lengthM);
    expect(sliding(kept)).toEqual([]);
  });

  it("find at rest whatever they keep, so that nothing can be found twice", () => {
    const liveIds = new Set(sized(60, true).checks.map(({ id }) => id));
    const onlyAtRest = checksWhileDragged([], atRest, 60).map(({ id }) => id);
    expect(onlyAtRest.length).toBeGreaterThan(1);
    expect(onlyAtRest.filter((id) => liveIds.has(id))).toEqual([]);
    expect(RULES.map(({ id }) => id)).toEqual(expect.arrayContaining(onlyAtRest));
  });
});
