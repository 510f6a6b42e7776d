import { failureOf, type Outcome } from "../../../shared/failure.ts";
import type { Alignment, ReachSection } from "../../../shared/plan.ts";
import { isStandard, STANDARD, sectionsOf } from "../../../shared/reaches.ts";
import { apply } from "../store.ts";
import type { Edit } from "../types.ts";
import { edit, withAlternativeChanged } from "./alternatives.ts";

/** Closest two breaks may stand, metres. */
const CLOSEST_M = 0.5;

/** A part of a line between two stations; from beyond to it runs over a ring's closing point. */
export interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

/** The breaks with one more, in order; refused outside the line or on another break. */
export function breaksWith(
  breaksM: readonly number[],
  atM: number,
  lengthM: number,
): Outcome<readonly number[]> {
  if (!(atM > CLOSEST_M && atM < lengthM - CLOSEST_M)) {
    return { ok: false, failure: failureOf("reach/outside") };
  }
  if (breaksM.some((each) => Math.abs(each - atM) < CLOSEST_M)) {
    return { ok: false, failure: failureOf("reach/taken", { closestM: CLOSEST_M }) };
  }
  return { ok: true, value: [...breaksM, atM].sort((a, b) => a - b) };
}

/** The line divided at one more station; both halves are built as the whole was. */
export function withBreak(line: Alignment, atM: number, lengthM: number): Outcome<Alignment> {
  const breaks = breaksWith(line.reachBreaksM, atM, lengthM);
  if (!breaks.ok) return breaks;
  const at = breaks.value.indexOf(atM);
  const sections = sectionsOf(line);
  const next = [...sections.slice(0, at + 1), ...sections.slice(at)];
  return { ok: true, value: reaching(line, breaks.value, next) };
}

/** The line with two reaches joined; both are then built as the first of them was. */
export function withoutBreak(line: Alignment, atM: number): Alignment {
  const at = line.reachBreaksM.indexOf(atM);
  if (at < 0) return line;
  const breaks = line.reachBreaksM.filter((_, index) => index !== at);
  const sections = sectionsOf(line).filter((_, index) => index !== at + 1);
  return reaching(line, breaks, sections);
}

/** The line with one break at another station; it may not pass its neighbours. */
export function withBreakMoved(
  line: Alignment,
  index: number,
  toM: number,
  lengthM: number,
): Outcome<Alignment> {
  const breaks = line.reachBreaksM;
  const others = breaks.filter((_, each) => each !== index);
  const moved = breaksWith(others, toM, lengthM);
  if (!moved.ok) return moved;
  if (moved.value.indexOf(toM) !== index) {
    return { ok: false, failure: failureOf("reach/passed") };
  }
  return { ok: true, value: reaching(line, moved.value, sectionsOf(line)) };
}

/**
 * The line with a stretch built as `built`: divided at both ends where it is not yet. Breaks inside the
 * stretch stay. On a ring it may run over the closing point.
 */
export function withStretch(
  line: Alignment,
  { fromM, toM }: Stretch,
  built: ReachSection,
  lengthM: number,
): Outcome<Alignment> {
  const wraps = fromM > toM;
  if (!isOnLine(fromM, lengthM) || !isOnLine(toM, lengthM) || (wraps && line.kind !== "ring")) {
    return { ok: false, failure: failureOf("reach/stretch") };
  }
  if (Math.abs(toM - fromM) < 2 * CLOSEST_M) {
    return { ok: false, failure: failureOf("reach/short", { shortestM: 2 * CLOSEST_M }) };
  }
  const fromEndM = endOf(line, fromM, lengthM);
  const divided = divide(line, fromEndM, lengthM);
  const toEndM = endOf(divided, toM, lengthM);
  const whole = divide(divided, toEndM, lengthM);
  const starts = [0, ...whole.reachBreaksM];
  const sections = sectionsOf(whole).map((section, index) => {
    const startM = starts[index]!;
    const inside = wraps
      ? startM >= fromEndM || startM < toEndM
      : startM >= fromEndM && startM < toEndM;
    return inside ? built : section;
  });
  return { ok: true, value: reaching(whole, whole.reachBreaksM, sections) };
}

/** The line with one reach built as something. */
export function withReachBuilt(line: Alignment, index: number, built: ReachSection): Alignment {
  const sections = sectionsOf(line).map((each, at) => (at === index ? built : each));
  return reaching(line, line.reachBreaksM, sections);
}

/** A reach with one of its section's own figures; null sets it back to its default. */
export function withFigure(reach: ReachSection, key: string, value: number | null): ReachSection {
  const { [key]: _, ...others } = reach.figures;
  return { ...reach, figures: value === null ? others : { ...others, [key]: value } };
}

export function addBreak(alternative: Alignment, atM: number, lengthM: number): Outcome<void> {
  return change(alternative, `Divide ${alternative.name} into reaches`, (now) =>
    withBreak(now, atM, lengthM),
  );
}

export function removeBreak(alternative: Alignment, atM: number): void {
  edit({
    note: `Join two reaches of ${alternative.name}`,
    change: (plan) => withAlternativeChanged(plan, alternative.id, (now) => withoutBreak(now, atM)),
  });
}

export function moveBreak(
  alternative: Alignment,
  index: number,
  toM: number,
  lengthM: number,
  gesture?: string,
): Outcome<void> {
  const note = `Move the end of a reach of ${alternative.name}`;
  return change(alternative, note, (now) => withBreakMoved(now, index, toM, lengthM), gesture);
}

export function buildStretch(
  alternative: Alignment,
  stretch: Stretch,
  built: ReachSection,
  lengthM: number,
): Outcome<void> {
  return change(alternative, `Build a stretch of ${alternative.name} otherwise`, (now) =>
    withStretch(now, stretch, built, lengthM),
  );
}

export function buildReach(
  alternative: Alignment,
  index: number,
  built: ReachSection,
  step: Pick<Edit, "note" | "gesture">,
): Outcome<void> {
  return change(
    alternative,
    step.note,
    (now) => ({ ok: true, value: withReachBuilt(now, index, built) }),
    step.gesture,
  );
}

function change(
  { id, ...alternative }: Alignment,
  note: string,
  next: (now: Alignment) => Outcome<Alignment>,
  gesture?: string,
): Outcome<void> {
  const tried = next({ id, ...alternative });
  if (!tried.ok) return tried;
  return apply({
    note,
    gesture,
    change: (plan) => withAlternativeChanged(plan, id, () => tried.value),
  });
}

/** A station where a stretch may end: an end of the line or a break that is as good as there, else itself. */
function endOf({ reachBreaksM }: Alignment, atM: number, lengthM: number): number {
  const ends = [0, ...reachBreaksM, lengthM];
  return ends.find((end) => Math.abs(end - atM) <= CLOSEST_M) ?? atM;
}

function divide(line: Alignment, atM: number, lengthM: number): Alignment {
  const divided = withBreak(line, atM, lengthM);
  return divided.ok ? divided.value : line;
}

function isOnLine(atM: number, lengthM: number): boolean {
  return atM >= -CLOSEST_M && atM <= lengthM + CLOSEST_M;
}

/** The line with these breaks and sections; what is standard to the end is left out. */
function reaching(
  { reachSections: _, ...bare }: Alignment,
  reachBreaksM: readonly number[],
  sections: readonly ReachSection[],
): Alignment {
  const last = sections.findLastIndex((each) => !isPlain(each));
  const line = { ...bare, reachBreaksM };
  return last < 0 ? line : { ...line, reachSections: sections.slice(0, last + 1) };
}

function isPlain(built: ReachSection): boolean {
  return built === STANDARD || (isStandard(built) && Object.keys(built.figures).length === 0);
}
