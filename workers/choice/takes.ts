import type { Takes } from "../../shared/buildings/choice-types.ts";
import type { Candidate } from "../../shared/buildings/types.ts";
import { peopleFor, type Workers } from "./hour-limits.ts";

/** What lines take together. */
export function takesOf(lines: readonly Candidate[], workers: Workers | null): Takes {
  const sum = (key: "bags" | "sandM3" | "sheetM2" | "personHours") =>
    lines.reduce((all, line) => all + line[key], 0);
  return {
    bags: sum("bags"),
    sandM3: sum("sandM3"),
    sheetM2: sum("sheetM2"),
    personHours: sum("personHours"),
    people: workers && peopleFor(lines, workers),
  };
}
