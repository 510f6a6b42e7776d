import type { ClosureTime } from "../../time/types.ts";
import { formatCount, formatHours } from "../../units.ts";
import { closeByWords } from "../closures.ts";
import type { Units } from "../units.ts";
import { type RulesOf, rule, type TextOf } from "./text.ts";

const ASIDE =
  "Fill its bags and set them and its poly sheeting beside it now: filling them is in no hours.";

const MISSING = {
  when: {
    what: "no stage or hour to close it is set",
    remedy: "Set the stage or the hour at which closing begins.",
  },
  people: {
    what: "nobody is kept for it",
    remedy: "Enter the people kept beside it until it is closed.",
  },
  forecast: {
    what: "there is no forecast to compare it with",
    remedy: "Enter the forecast, with the water by stage.",
  },
} as const;

function openWords(closure: ClosureTime, u: Units): string {
  const by = closeByWords(closure, u.system);
  return `left open for vehicles${by === null ? "" : ` until ${by}`}; ${formatCount(closure.bags)} bags to lay there`;
}

function takesWords({ takesSlowH, people }: ClosureTime): string {
  if (takesSlowH === null || people === null) return "";
  const hours = formatHours(takesSlowH);
  return `, ${hours} with ${people === 1 ? "1 person" : `${formatCount(people)} people`}`;
}

export const CLOSURE_TEXT: TextOf<"closure" | "closure-late" | "closure-not-known"> = {
  closure: (found, u) => ({
    what: `${openWords(found, u)}${takesWords(found)}. By the likely forecast it is closed in time at the slow pace.`,
    remedy: `${ASIDE} Watch the river there, and close it earlier if it rises faster.`,
  }),
  "closure-late": (found, u) => ({
    what: `${openWords(found, u)}${takesWords(found)}. Water is there before it is closed${found.earlyH === null ? "" : `, ${formatHours(-found.earlyH)} too late`}.`,
    remedy: "Close it at a lower stage or an earlier hour, or keep more people for it.",
  }),
  "closure-not-known": ({ bags, missing }) => ({
    what: `left open for vehicles, ${formatCount(bags)} bags to lay there: it is not known whether it can still be closed, since ${MISSING[missing].what}.`,
    remedy: `${MISSING[missing].remedy} ${ASIDE}`,
  }),
};

export const CLOSURE_RULES: RulesOf<"closure"> = {
  closure: rule(
    "A way left open is closed by the people kept for it, at the slow rate of laying, before the water is the margin below its lowest ground.",
    "THW-E (40 bags an hour and person); how it is compared: judgement",
  ),
};
