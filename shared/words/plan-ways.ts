import type { Closure, Culvert, Drain, ExitRoad, PossibleCulvert } from "../plan.ts";
import type { UnitSystem } from "../units.ts";
import { capital } from "./capital.ts";
import { DRAIN_WORDS } from "./checks/pipes.ts";
import { closeByWords, LEFT_OPEN_SHORT } from "./closures.ts";
import { stationsWords } from "./crew-parts.ts";

/** Words on the printed plan, line for line: what a pipe, a drain, a way is, and its state. */
export const PLAN_WAYS = {
  road: ({ name }: ExitRoad): readonly string[] => [`Exit road: ${name}`],
  culvert: ({ name, plugged }: Culvert): readonly string[] => [name, pipeState(plugged)],
  drain: ({ name, kind, plugged }: Drain): readonly string[] => [
    `${capital(DRAIN_WORDS[kind])}: ${name}`,
    pipeState(plugged),
  ],
  look: ({ name }: PossibleCulvert): readonly string[] => [name, "look for a pipe"],
  closure: (closure: Closure, system: UnitSystem): readonly string[] => {
    const by = closeByWords(closure.closeBy, system);
    const until = by === null ? "when to close: not set" : `close from ${by}`;
    return [capital(LEFT_OPEN_SHORT), stationsWords(closure, system), until];
  },
};

function pipeState(plugged: boolean): string {
  return plugged ? "plugged" : "open: plug it";
}
