import type { CrewInput } from "../time/crew-inputs.ts";

const NAMES: Readonly<Record<CrewInput, string>> = {
  people: "people",
  startAt: "start of work",
  shifts: "shifts",
};

/** `people, start of work and shifts`. */
export function crewInputWords(inputs: readonly CrewInput[]): string {
  const names = inputs.map((each) => NAMES[each]);
  const last = names.pop() ?? "";
  return names.length > 0 ? `${names.join(", ")} and ${last}` : last;
}

/** `Not known: type people, start of work and shifts`: the result of time while these are missing. */
export function timeNotKnownWords(missing: readonly CrewInput[]): string {
  return `Not known: type ${crewInputWords(missing)}`;
}
