import { batch, effect, untracked } from "@preact/signals";
import { checksWhileDragged } from "../../shared/checks.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { engine } from "../engine.ts";
import { sizedFor, sizedIsWhole, toSize } from "./current.ts";
import { follow } from "./follow.ts";
import { sized, sizingFailure } from "./results.ts";
import { uncounted } from "./uncounted.ts";

/** After the last change by this long what is left out during a drag is counted too, milliseconds. */
const SETTLE_MS = 180;

const dragged = follow(toSize, {
  overtaken: "shown",
  ask: (question, signal) => engine.size({ plan: withImported(question), live: true }, { signal }),
});
const whole = follow(toSize, {
  overtaken: "shown",
  restMs: SETTLE_MS,
  ask: (question, signal) => engine.size({ plan: withImported(question), live: false }, { signal }),
});

/** The plan with the imported footprints that its lines should keep off, which the checks look at. */
function withImported({ plan, imported }: NonNullable<typeof toSize.value>): Plan {
  return imported.length === 0 ? plan : { ...plan, noGo: [...plan.noGo, ...imported] };
}

/** Keeps `sized` in step with the plan: a line follows a drag, and is sized in full when the plan rests. */
export function keepSized(): () => void {
  const stops = [
    dragged.keep(),
    whole.keep(),
    effect(() => {
      const last = dragged.answered.value;
      if (last && !sizedIsWhole.peek()) untracked(() => show(last.of, last.answer.lines, false));
    }),
    effect(() => {
      const last = whole.answered.value;
      if (last && whole.isCurrent.peek()) untracked(() => show(last.of, last.answer.lines, true));
    }),
    effect(() => {
      const failed = [dragged, whole].map((each) => each.failed.value);
      const last = failed.find((each) => each && each.of === toSize.peek());
      if (last) sizingFailure.value = last.answer;
    }),
    effect(() => {
      if (!uncounted.value) return;
      const why = uncounted.value;
      untracked(() => {
        show(null, [], true);
        sizingFailure.value = why;
      });
    }),
  ];
  return () => {
    for (const stop of stops) stop();
  };
}

function show(of: typeof toSize.value, lines: readonly SizedLine[], isWhole: boolean): void {
  batch(() => {
    sized.value = new Map(lines.map((line) => [line.id, isWhole ? line : withLastWhole(line)]));
    sizedFor.value = { of, isWhole };
    sizingFailure.value = null;
  });
}

/** Keeps in sight, while a line is dragged, what was found of it when it was sized in full. */
function withLastWhole(line: SizedLine): SizedLine {
  const before = sized.peek().get(line.id);
  if (!before) return line;
  const { lengthM } = line.totals;
  return { ...line, checks: checksWhileDragged(line.checks, before.checks, lengthM) };
}
