import type { Gauge } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";

/** Names the gauge, wherever it stands; no name and no place is no gauge. */
export function nameGauge(name: string): void {
  edit({
    note: "Name the gauge",
    change: (now) => ({ ...now, gauge: gaugeOf(name.trim(), now.gauge?.at ?? null) }),
  });
}

/** Takes the gauge from the map; its name stays. */
export function removeGauge(): void {
  edit({
    note: "Remove the gauge from the map",
    change: (now) => ({ ...now, gauge: gaugeOf(now.gauge?.name ?? "", null) }),
  });
}

function gaugeOf(name: string, at: Gauge["at"]): Gauge | null {
  if (name === "" && at === null) return null;
  return { name: name === "" ? "Gauge" : name, at };
}
