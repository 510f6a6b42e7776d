import type { TracedPipe } from "../water-types.ts";
import { type LineContext, nameOf, type TraceRule, type WaterContext } from "./trace-rule.ts";

/** Names are as the person typed them, null for the ground inside a ring without a building. */
export interface ThroughFinding {
  /** With the line built, or with nothing built. */
  readonly kind: "let-in-by-pipe" | "reached-by-pipe";
  readonly reaches: string | null;
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
    context.line.structures.flatMap(({ id, throughPipe }) => {
      if (!throughPipe?.alone) return [];
      const { pipes, first } = named(context, throughPipe.ids);
      const { isKnown } = throughPipe;
      const reaches = nameOf(context, id);
      const finding = { kind: "let-in-by-pipe", reaches, pipes, isKnown } as const;
      return [{ severity: "stop", at: first?.at ?? null, finding }];
    }),
};

/** Buildings that the water reaches through open pipes alone, with nothing built. */
export const reachedByPipe: TraceRule<WaterContext> = {
  id: "reached-by-pipe",
  find: (context) =>
    context.structures.flatMap(({ name: reaches, throughPipe }) => {
      if (!throughPipe?.alone) return [];
      const { pipes, first } = named(context, throughPipe.ids);
      const { isKnown } = throughPipe;
      const finding = { kind: "reached-by-pipe", reaches, pipes, isKnown } as const;
      return [{ severity: "caution", at: first?.at ?? null, finding }];
    }),
};

function named({ pipes }: { readonly pipes: readonly TracedPipe[] }, ids: readonly string[]) {
  const found = pipes.filter(({ id }) => ids.includes(id));
  return {
    pipes: found.map(({ id: pipeId, name, kind }): PipeName => ({ pipeId, name, kind })),
    first: found[0],
  };
}
