import type { Outcome } from "../../../shared/failure.ts";
import type { GroundSummary } from "../../../shared/messages.ts";
import type { Flow, LonLat, NoGo, Plan, Structure, WaterSource } from "../../../shared/plan.ts";
import { planPlane } from "../../../shared/plan-plane.ts";
import { apply } from "../store.ts";
import { edit } from "./alternatives.ts";
import { rounded } from "./corners.ts";

/** How long a flow arrow that was typed as a direction is drawn, metres. */
const ARROW_M = 150;

export function changeStructure(
  structure: Structure,
  note: string,
  change: Partial<Structure>,
  gesture?: string,
): Outcome<void> {
  return apply({
    note,
    gesture,
    change: (plan) => ({
      ...plan,
      structures: plan.structures.map((each) =>
        each.id === structure.id ? { ...each, ...change } : each,
      ),
    }),
  });
}

export function deleteStructure(structure: Structure): void {
  edit({
    note: `Delete ${structure.name || "building"}`,
    change: (plan) => ({
      ...plan,
      structures: plan.structures.filter((each) => each.id !== structure.id),
    }),
  });
}

export function renameNoGo(area: NoGo, name: string): void {
  edit({
    note: `Rename ${area.name || "no-go area"}`,
    change: (plan) => ({
      ...plan,
      noGo: plan.noGo.map((each) => (each.id === area.id ? { ...each, name } : each)),
    }),
  });
}

export function deleteNoGo(area: NoGo): void {
  edit({
    note: `Delete ${area.name || "no-go area"}`,
    change: (plan) => ({ ...plan, noGo: plan.noGo.filter((each) => each.id !== area.id) }),
  });
}

export function renameSource(source: WaterSource, name: string): void {
  edit({
    note: `Rename ${source.name || "source"}`,
    change: ({ sources, ...plan }) =>
      sources
        ? {
            ...plan,
            sources: sources.map((each) => (each.id === source.id ? { ...each, name } : each)),
          }
        : plan,
  });
}

export function deleteSource(source: WaterSource): void {
  edit({
    note: `Delete ${source.name || "source"}`,
    change: ({ sources, ...plan }) => {
      const left = (sources ?? []).filter((each) => each.id !== source.id);
      return left.length > 0 ? { ...plan, sources: left } : plan;
    },
  });
}

/** Compass direction of the flow, degrees clockwise from north, 0 to 360. */
export function bearingOf(flow: Flow): number {
  const [x, y] = planPlane(flow.from).toPlane(flow.to);
  return ((Math.atan2(x, y) * 180) / Math.PI + 360) % 360;
}

/** An arrow of the same start and length in another direction; `from` starts a new one. */
export function flowToward(flow: Flow | null, from: LonLat, bearingDeg: number): Flow {
  const start = flow?.from ?? from;
  const plane = planPlane(start);
  const [oldX, oldY] = flow ? plane.toPlane(flow.to) : [0, ARROW_M];
  const lengthM = Math.hypot(oldX, oldY);
  const angle = (bearingDeg * Math.PI) / 180;
  const [lon, lat] = plane.toLonLat(lengthM * Math.sin(angle), lengthM * Math.cos(angle));
  return { from: start, to: rounded(lon, lat) };
}

/** A place to start from when nothing is pointed at: the first building, the first corner, the middle of the ground. */
export function siteMiddle(plan: Plan, ground: GroundSummary | null): LonLat | null {
  const drawn = plan.structures[0]?.outline[0] ?? plan.alignments[0]?.corners[0];
  if (drawn) return drawn;
  if (!ground) return null;
  const [west, south, east, north] = ground.bounds;
  return rounded((west + east) / 2, (south + north) / 2);
}
