import { holdingOf } from "../defaults.ts";
import { formatHours } from "../units.ts";
import type { Finding, Rule } from "./rule.ts";
import { elevationWords, flowsWords, flowWords } from "./words.ts";

/** A pump that fails must leave this long to start another. Source: judgement. */
const HOURS_TO_ACT = 2;
const HOLES_WORTH_TELLING = 0.01;

/** What has to be pumped, and with what. */
export const pumps: Rule = {
  id: "pumps",
  rule: "Pumps carry rain inside and seepage, 1.5 times over, with a spare.",
  source: "LSU, PWM; the margin and the spare from memory",
  find: ({ holding, plan, levelDoubt }) => {
    if (!holding?.pumping.proposed || levelDoubt?.countsUnknown) return [];
    const { demandM3PerS, capacityM3PerS, proposed, rainM3PerS } = holding.pumping;
    const { name, working, spare } = proposed;
    const low = holding.inside;
    const sump = low
      ? ` The lowest place inside, at ${elevationWords(low.lowestM)}, is the sump.`
      : "";
    const uncounted = [
      ...(rainM3PerS ? [] : ["rain, for the ground that drains to a line is not known"]),
      ...(holdingOf(plan).underDepthM > 0 ? [] : ["seepage under the levee"]),
      "leaks at joints and closures",
    ];
    return [
      {
        severity: "note",
        stretch: null,
        sample: null,
        ...(low ? { at: low.lowestAt } : {}),
        message: `To be pumped: ${flowsWords(demandM3PerS)}. Pumps for ${flowWords(capacityM3PerS)}: ${working} at work and ${spare} spare, ${name}.${sump} Not counted: ${uncounted.join("; ")}.`,
        remedy:
          "Have them on site with fuel, hose and power of their own before the water comes, on protected circuits. Output falls with head and hose: ask the maker.",
      },
    ];
  },
};

/** What happens inside when a pump fails. */
export const pumpFailure: Rule = {
  id: "pump-failure",
  rule: "When one pump fails there is time to start another before a structure gets wet.",
  source: "judgement; LSU (several small pumps beat one large)",
  find: ({ holding }) => {
    const oneFails = holding?.pumping.oneFails;
    if (!oneFails || oneFails.hoursToStructure === null) return [];
    if (oneFails.hoursToStructure >= HOURS_TO_ACT) return [];
    const findings: Finding[] = [
      {
        severity: "caution",
        stretch: null,
        sample: null,
        message: `When one pump fails in heavy rain, water gains by ${flowWords(oneFails.excessM3PerS)} and stands at a structure within ${formatHours(Math.max(0.1, oneFails.hoursToStructure))}.`,
        remedy:
          "Connect the spare so that it starts at once, and have the pumps watched day and night.",
      },
    ];
    return findings;
  },
};

/** Ground inside that is not known. */
export const insideHoles: Rule = {
  id: "inside-holes",
  rule: "The ground inside the ring is known, so that its lowest place is.",
  source: "judgement",
  find: ({ holding }) => {
    const inside = holding?.inside;
    if (!inside || inside.holeShare < HOLES_WORTH_TELLING) return [];
    return [
      {
        severity: "caution",
        stretch: null,
        sample: null,
        message: `Inside the ring ${Math.round(inside.holeShare * 100)} % of the ground has no data: the lowest place may be there, and nothing is counted as stored there.`,
        remedy: "Look for the lowest place on the ground before you set the sump.",
      },
    ];
  },
};
