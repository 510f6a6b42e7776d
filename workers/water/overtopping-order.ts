import type { Overtopping } from "../../shared/water-types.ts";
import { isRaised } from "./levee-wall.ts";
import type { Levee } from "./passage.ts";
import { elevationAt, groundAt, type TraceContext } from "./trace-context.ts";

/**
 * Places along a line in the order in which a rising river goes over them: the levee at its crest, ground
 * that is higher at its own height. What is overtopped at one time is given lowest ground first, where the
 * levee is highest.
 */
export function overtoppingOrder(
  context: TraceContext,
  { line, wall, crestM }: Levee,
): Overtopping[] {
  const { plan, levelM } = context;
  const order = Array.from(wall.cells.keys()).sort(
    (a, b) => wall.chainageM[a]! - wall.chainageM[b]!,
  );
  const wanted = [...line.chainageM, ...intervals(line.lengthM, plan.practice.stationIntervalM)];
  const picked = new Set<number>();
  let next = 0;
  for (const chainageM of wanted.sort((a, b) => a - b)) {
    while (next + 1 < order.length && wall.chainageM[order[next + 1]!]! <= chainageM) next++;
    if (order.length > 0) picked.add(order[next]!);
  }
  const places = Array.from(picked, (k): Overtopping & { readonly heightM: number } => {
    const cell = wall.cells[k]!;
    const raised = isRaised(wall, k, crestM);
    const topM = raised ? crestM : wall.groundM[k]!;
    return {
      chainageM: wall.chainageM[k]!,
      riseM: topM - levelM,
      elevationM: elevationAt(context, cell, topM),
      groundM: groundAt(context, cell),
      over: raised ? "crest" : "ground",
      heightM: raised ? crestM - wall.groundM[k]! : 0,
    };
  });
  return places
    .sort((a, b) => a.riseM - b.riseM || b.heightM - a.heightM || a.chainageM - b.chainageM)
    .map(({ heightM: _, ...place }) => place);
}

function intervals(lengthM: number, stepM: number): number[] {
  return Array.from({ length: Math.floor(lengthM / stepM) + 1 }, (_, k) => k * stepM);
}
