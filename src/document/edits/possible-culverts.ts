import { answeredCandidate, drawnCulvert } from "../../../shared/pipes/drawn-pipes.ts";
import type { LonLat, Plan, PossibleCulvert } from "../../../shared/plan.ts";
import { edit } from "./alternatives.ts";
import { withAdded, withChanged, withoutListed } from "./listed.ts";

/** What a person says of a place where there may be a culvert. */
export type CulvertAnswer = "yes" | PossibleCulvert["answer"];

/** Answers a place that was asked about: a culvert of the plan, open and with the ground as its inverts, or a place kept as answered. */
export function answerCandidate(ends: readonly LonLat[], answer: CulvertAnswer): void {
  edit({
    note: "Answer a possible culvert",
    change: (plan) => (answer === "yes" ? withCulvert(plan, ends) : withAnswer(plan, ends, answer)),
  });
}

/** Changes the answer of a place; with a culvert there it is no longer a possible one. */
export function changeAnswer(place: PossibleCulvert, answer: CulvertAnswer): void {
  const { id, name, path } = place;
  edit({
    note: `Answer ${name}`,
    change: (plan) => {
      if (answer === "yes") return withCulvert(withoutListed(plan, "possibleCulverts", id), path);
      return withChanged(plan, "possibleCulverts", id, { answer });
    },
  });
}

/** Takes an answer back: the place is asked about again. */
export function takeBack({ id, name }: PossibleCulvert): void {
  edit({
    note: `Ask about ${name} again`,
    change: (plan) => withoutListed(plan, "possibleCulverts", id),
  });
}

function withCulvert(plan: Plan, path: readonly LonLat[]): Plan {
  return withAdded(plan, "culverts", drawnCulvert(path, plan.culverts ?? []));
}

function withAnswer(plan: Plan, path: readonly LonLat[], answer: PossibleCulvert["answer"]): Plan {
  const { possibleCulverts: others = [] } = plan;
  return withAdded(plan, "possibleCulverts", answeredCandidate(path, answer, others));
}
