import { refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";
import { pinsOf } from "../../shared/pins.ts";
import type { Alignment, Plan } from "../../shared/plan.ts";
import type {
  ImproveLineRequest,
  ImproveLineResponse,
  SearchNote,
} from "../../shared/search-types.ts";
import type { Terrain } from "../raster/terrain.ts";
import { type DrawnLine, improveLine } from "../search/improve-line.ts";
import { inTurns } from "../search/in-turns.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";
import { kept, totalsOf } from "./found-line.ts";
import { lineSetting, onPlane } from "./search-setup.ts";

/**
 * A drawn line with its corners moved to the nearest cheaper place; pinned corners, and legs between two
 * pinned neighbours, stay.
 * @throws Refusal `plan/no-such-line`, `site/too-few-corners`
 */
export async function improve(
  terrain: Terrain,
  { plan, id, maxCorners }: ImproveLineRequest,
  options?: CallOptions,
): Promise<ImproveLineResponse> {
  const alignment = alignmentOf(plan, id);
  const setting = await lineSetting(terrain, plan, alignment, maxCorners);
  stopIfCancelled(options);
  const { plane, request } = setting;
  const { kind } = alignment;
  const drawn = drawnLine(alignment, onPlane(plane, alignment.corners));
  const found = await inTurns(improveLine(request, drawn), options);
  const before = totalsOf(setting, kind, alignment.corners);
  const corners = found.corners.map((at, k) => {
    const pin = found.pinned[k]!;
    return pin >= 0 ? alignment.corners[pin]! : kept(plane.toLonLat(...at));
  });
  const pins = new Set(pinsOf(alignment));
  const pinned = found.pinned.flatMap((from, k) => (pins.has(from) ? [k] : []));
  const after = totalsOf(setting, kind, corners);
  const notes: SearchNote[] = [];
  if (!found.keepsRules) {
    notes.push({ kind: "rules-broken", wasBrokenBefore: !found.keptRulesBefore });
  }
  if (found.cutShort) notes.push({ kind: "improve-cut-short" });
  const { setbackM } = request.rule;
  return { corners, pinned, setbackM, before, after, cutShort: found.cutShort, notes };
}

/** @throws Refusal `plan/no-such-line` */
export function alignmentOf(plan: Plan, id: string): Alignment {
  const alignment = plan.alignments.find((each) => each.id === id);
  if (alignment) return alignment;
  throw refusal("plan/no-such-line", { id });
}

function drawnLine(alignment: Alignment, corners: DrawnLine["corners"]): DrawnLine {
  const pinnedCorners = pinsOf(alignment);
  const pins = new Set(pinnedCorners);
  const closed = alignment.kind === "ring";
  const next = (k: number) => (closed ? (k + 1) % corners.length : k + 1);
  return {
    ...{ corners, closed, pinnedCorners },
    pinnedLegs: pinnedCorners.filter((k) => pins.has(next(k))),
  };
}
