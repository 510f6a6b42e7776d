import { foundAlternatives } from "../../../shared/found-alternative.ts";
import type { Alignment, Plan } from "../../../shared/plan.ts";
import type { FindRingResponse, FoundLine, RingOptions } from "../../../shared/search-types.ts";
import { chosenId } from "../../document/chosen.ts";
import { edit, withAlternativeChanged } from "../../document/edits/alternatives.ts";
import { followUp, plan } from "../../document/store.ts";
import {
  asFound,
  type Found,
  found,
  foundForOf,
  foundNow,
  type Inputs,
  inputsOf,
  rememberFound,
} from "./found.ts";

/**
 * Puts what a search found into the plan as one step: in place of what was found for the same structures
 * before, when nobody has touched that since, else as new alternatives. The first of them is chosen.
 * @returns whether the plan took it
 */
export function putFound(
  { lines, cutShort, notes }: FindRingResponse,
  ringOptions: RingOptions,
  inputs: Inputs,
): boolean {
  const last = untouched(ringOptions);
  const againstId = last ? last.againstId : chosenId.peek();
  const before = plan.peek();
  const ids = put(lines, inputs, last, last ? "Find the ring again" : "Find the ring");
  if (!ids) return false;
  found.value = {
    ids,
    againstId,
    ringOptions,
    inputs,
    before,
    lines,
    cutShort,
    notes,
    further: null,
  };
  return true;
}

/**
 * Puts the line of a thorough search in the place of the first, within the step that put that there, when it
 * is one line of the same kind that needs fewer bags and nothing else was done since.
 * @returns whether it did
 */
export function putPolished(
  { ids, lines, inputs, before }: Found,
  better: readonly FoundLine[],
): boolean {
  const [first, ...more] = lines;
  const [line, ...others] = better;
  if (!first || !line || !before || more.length + others.length > 0) return false;
  if (line.kind !== first.kind || line.totals.bags >= first.totals.bags) return false;
  if (line.totals.lengthNoDataM > first.totals.lengthNoDataM) return false;
  rememberFound(line.corners, inputs);
  const outcome = followUp(before, (now) =>
    withAlternativeChanged(now, ids[0]!, (each) =>
      each.corners === first.corners ? asFound(each, line) : each,
    ),
  );
  return outcome.ok && outcome.value;
}

/**
 * Puts other lines of the same search in place of what was found: a bigger cordon, separate rings.
 * @param window where they were looked for, when not where the last were
 */
export function takeInstead(
  lines: readonly FoundLine[],
  note: string,
  window?: RingOptions["window"],
): void {
  const last = foundNow.peek();
  if (!last) return;
  const ids = put(lines, inputsOf(plan.peek()), last, note);
  const ringOptions = window ? { ...last.ringOptions, window } : last.ringOptions;
  if (ids) found.value = { ...last, ids, lines, ringOptions, before: null };
}

/** The last found when it goes round the same structures and its alternatives are as they were found. */
function untouched(ringOptions: RingOptions): Found | null {
  const last = foundNow.peek();
  const same = String(last?.ringOptions.structureIds) === String(ringOptions.structureIds);
  if (!last || !same) return null;
  const own = plan.peek().alignments.filter(({ id }) => last.ids.includes(id));
  return own.every((each) => foundForOf(each)) ? last : null;
}

function put(
  lines: readonly FoundLine[],
  inputs: Inputs,
  last: Found | null,
  note: string,
): readonly string[] | null {
  for (const { corners } of lines) rememberFound(corners, inputs);
  const before = plan.peek();
  const kept = before.alignments.filter(({ id }) => !last?.ids.includes(id));
  const fresh = foundAlternatives({ ...before, alignments: kept }, lines);
  const own = lines.length === 1 ? sameAlternative(before, last) : null;
  const named = own ? [asFound(own, lines[0]!)] : fresh;
  const done = edit({ note, change: (now) => withFound(now, last?.ids ?? [], named) });
  return done ? named.map(({ id }) => id) : null;
}

/** The one alternative that the last found is, whose name and identifier go on; null when it is several. */
function sameAlternative(of: Plan, last: Found | null): Alignment | null {
  if (last?.ids.length !== 1) return null;
  return of.alignments.find(({ id }) => id === last.ids[0]) ?? null;
}

/** A plan with alternatives in the place of others, or at the end; the first of them chosen. */
function withFound(of: Plan, replaced: readonly string[], added: readonly Alignment[]): Plan {
  const at = of.alignments.findIndex(({ id }) => replaced.includes(id));
  const isKept = ({ id }: Alignment) => !replaced.includes(id);
  const [head, tail] =
    at < 0 ? [of.alignments, []] : [of.alignments.slice(0, at), of.alignments.slice(at)];
  return {
    ...of,
    alignments: [...head, ...added, ...tail.filter(isKept)],
    chosenId: added[0]!.id,
  };
}
