import type { Alignment, Plan } from "./plan.ts";
import { freeNumbered } from "./plan-names.ts";
import { cleanText, MAX_NAME } from "./plan-text.ts";
import type { FoundLine } from "./search-types.ts";

/** Room kept for the number that tells two of the same name apart. */
const NUMBER_ROOM = 8;

/** Found lines as alternatives of a plan, with identifiers and names that are free in it. */
export function foundAlternatives(plan: Plan, lines: readonly FoundLine[]): Alignment[] {
  const ids = new Set(plan.alignments.map((each) => each.id));
  const names = new Set(plan.alignments.map((each) => each.name));
  return lines.map((line): Alignment => {
    const id = freeNumbered(ids, "found-");
    const name = freeName(names, nameOf(plan, line, lines.length > 1));
    ids.add(id);
    names.add(name);
    const { kind, corners, setbackM } = line;
    return { id, name, kind, corners, reachBreaksM: [], setbackM };
  });
}

function nameOf(plan: Plan, { kind, encloses }: FoundLine, isOneOfSeveral: boolean): string {
  const found = kind === "ring" ? "Found ring" : "Found line";
  if (!isOneOfSeveral) return found;
  const inside = plan.structures.filter(({ id }) => encloses.includes(id)).map(({ name }) => name);
  return cleanText(`${found}, ${inside.join(", ")}`, MAX_NAME - NUMBER_ROOM);
}

function freeName(taken: ReadonlySet<string>, wanted: string): string {
  if (!taken.has(wanted)) return wanted;
  return freeNumbered(new Set([...taken, `${wanted} 1`]), `${wanted} `);
}
