import type { CrewInput } from "../time/crew-inputs.ts";
import type { TimeUnknown, TimeVerdict } from "../time/time-verdict.ts";
import { formatLength, type UnitSystem } from "../units.ts";
import { levelDoubtShort } from "./level-doubt.ts";

/** The verdict on a line's time, the same words wherever one is given: `late at slow pace`. */
export function timeVerdictWords(verdict: TimeVerdict, system: UnitSystem): string {
  switch (verdict.kind) {
    case "in-time":
      return "in time";
    case "late":
      return "late";
    case "late-slow":
      return "late at slow pace";
    case "late-if-high":
      return "late if the river runs high";
    case "over-a-year":
      return "late: over a year";
    case "too-low":
      return `sized ${formatLength(verdict.riseM, system)} below the forecast crest`;
    case "not-known":
      return verdict.because === "counting"
        ? "counting the hours"
        : `time not known: ${unknownTimeWords(verdict)}`;
  }
}

/** The same where the line's own name says that it is about time, and there is little room: `not known: no crew`. */
export function timeVerdictBrief(verdict: TimeVerdict, system: UnitSystem): string {
  if (verdict.kind === "too-low") return "below the forecast crest";
  if (verdict.kind !== "not-known" || verdict.because === "counting")
    return timeVerdictWords(verdict, system);
  const isShort =
    verdict.because === "no-crew" ||
    verdict.because === "no-forecast" ||
    verdict.because === "no-gauge-zero";
  return isShort ? `not known: ${unknownTimeWords(verdict)}` : "not known";
}

/** Why it is not known: `no crew`. */
function unknownTimeWords(unknown: TimeUnknown): string {
  switch (unknown.because) {
    case "counting":
      return "counting";
    case "doubt":
      return levelDoubtShort(unknown.doubt);
    case "no-crew":
      return `no ${CREW[unknown.missing[0]!]}`;
    case "no-forecast":
      return "no forecast";
    case "no-gauge-zero":
      return "no gauge zero";
    case "forecast-over":
      return "the forecast ends before the work starts";
    case "forecast-ends":
      return "the forecast ends before the work does";
    case "no-data":
      return "part has no elevation data";
    case "on-hold":
      return unknown.isAll ? "all is on HOLD" : "part is on HOLD";
  }
}

const CREW: Readonly<Record<CrewInput, string>> = {
  people: "crew",
  startAt: "start of work",
  shifts: "shifts",
};
