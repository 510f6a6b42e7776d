import type { Reached, TracedPipe } from "../water-types.ts";
import { type LineContext, nameOf, type TraceRule, type WaterContext } from "./trace-rule.ts";

/** Names are as the person typed them; none is reached by name in a ring without a building. */
export interface ThroughFinding {
  /** With the line built, or with nothing built. */
  readonly kind: "let-in-by-pipe" | "reached-by-pipe";
  readonly reaches: readonly string[];
  readonly pipes: readonly PipeName[];
  /** False where that hangs on an invert, or on where a drain leads, that is not known. */
  readonly isKnown: boolean;
}

/** A culvert or drain by its name. */
export interface PipeName extends Pick<TracedPipe, "name" | "kind"> {
  readonly pipeId: string;
}

/** Water that gets past a line through open pipes alone. */
export const letInByPipe: TraceRule<LineContext> = {
  id: "let-in-by-pipe",
  find: (context) =>
    throughPipes(context.line.structures, context.pipes).map(({ at, reached, ...through }) => ({
      ...{ severity: "stop", at },
      finding: {
        kind: "let-in-by-pipe",
        reaches: reached.flatMap(({ id }) => nameOf(context, id) ?? []),
        ...through,
      },
    })),
};

/** Buildings that the water reaches through open pipes alone, with nothing built. */
export const reachedByPipe: TraceRule<WaterContext> = {
  id: "reached-by-pipe",
  find: ({ structures, pipes }) =>
    throughPipes(structures, pipes).map(({ at, reached, ...through }) => ({
      ...{ severity: "caution", at },
      finding: { kind: "reached-by-pipe", reaches: reached.map(({ name }) => name), ...through },
    })),
};

/** What is reached through pipes alone, those that the same pipes let in together. */
function throughPipes(structures: readonly Reached[], pipes: readonly TracedPipe[]) {
  const groups = new Map<string, Reached[]>();
  for (const each of structures) {
    if (!each.throughPipe?.alone) continue;
    const key = JSON.stringify([each.throughPipe.ids.toSorted(), each.throughPipe.isKnown]);
    groups.set(key, [...(groups.get(key) ?? []), each]);
  }
  return [...groups.values()].map((reached) => {
    const { ids, isKnown } = reached[0]!.throughPipe!;
    const named = pipes.filter(({ id }) => ids.includes(id));
    const names = named.map(({ id: pipeId, name, kind }): PipeName => ({ pipeId, name, kind }));
    return { at: named[0]?.at ?? null, reached, pipes: names, isKnown };
  });
}
