import type { PlaneLine } from "../alignment.ts";

/** Places evenly along a line at which an error is drawn; on a ring the first follows the last. */
export interface AlongNodes {
  readonly count: number;
  readonly spacingM: number;
  readonly closed: boolean;
}

/** A place between two nodes and what each weighs there. */
export interface Between {
  readonly from: number;
  readonly to: number;
  readonly fromWeight: number;
  readonly toWeight: number;
}

/** Nodes no farther apart than `spacingM`. */
export function alongNodes({ closed, lengthM }: PlaneLine, spacingM: number): AlongNodes {
  const steps = Math.max(closed ? 3 : 1, Math.ceil(lengthM / spacingM - 1e-9));
  return { count: closed ? steps : steps + 1, spacingM: lengthM / steps, closed };
}

/** Linear interpolation between the two nodes beside a chainage. */
export function between(nodes: AlongNodes, chainageM: number): Between {
  const steps = nodes.closed ? nodes.count : nodes.count - 1;
  const place = Math.min(Math.max(chainageM / nodes.spacingM, 0), steps);
  const from = Math.min(Math.floor(place), steps - 1);
  const toWeight = place - from;
  return { from, to: (from + 1) % nodes.count, fromWeight: 1 - toWeight, toWeight };
}

/** What the weights 1 - share and share of two independent values are multiplied by to keep their variance. */
export function keepsVariance(share: number): number {
  const other = 1 - share;
  return 1 / Math.sqrt(other * other + share * share);
}
