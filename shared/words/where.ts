import type { Where } from "../checks/where.ts";
import type { Units } from "./units.ts";

/** `12+50 to 13+25`, `The whole line`, `240 ft in 4 more stretches, the worst 12+50 to 13+25`: begins a sentence. */
export function whereWords(where: Where, units: Units): string {
  switch (where.at) {
    case "whole-line":
      return "The whole line";
    case "station":
      return units.station(where.chainageM);
    case "stretch":
      return stretchWords(where, units);
    case "stretches": {
      const count = `${where.count} ${where.isRest ? "more stretches" : "stretches"}`;
      return `${units.distance(where.lengthM)} in ${count}, the worst ${whereWords(where.worst, units)}`;
    }
  }
}

/** `12+50 to 13+25`; one station where both ends come to the same. */
export function stretchWords(
  { fromM, toM, overClosing = false }: { fromM: number; toM: number; overClosing?: boolean },
  units: Units,
): string {
  const [from, to] = [units.station(fromM), units.station(toM)];
  if (from === to) return from;
  return `${from} to ${to}${overClosing ? " over the closing point" : ""}`;
}
