import { timeOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";

/** What only the person can say of the work, and without which nothing is timed. */
export type CrewInput = "people" | "startAt" | "shifts";

/** Which of these nobody has entered, in the order they are typed. */
export function missingCrew(plan: Plan): readonly CrewInput[] {
  const { startAt, shifts } = timeOf(plan);
  const missing = { people: plan.practice.people, startAt, shifts };
  return (["people", "startAt", "shifts"] as const).filter((each) => missing[each] === null);
}
