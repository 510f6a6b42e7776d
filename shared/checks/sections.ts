import type { BuiltReach } from "../sections/built-reach.ts";
import type { EmergencySection } from "../sections/types.ts";
import type { TracePiece } from "../trace.ts";
import { leastGreatestM } from "./height.ts";
import { type CheckContext, type Finding, ofWholePlan, type Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";
import { toldOf } from "./told.ts";
import { distanceWords, lengthWords, stationWords } from "./words.ts";

/** Heights over what a section other than the pyramid may be built to. */
export const sectionLimit: Rule = {
  id: "section-limit",
  rule: "No reach is higher than its own section may be built.",
  source: "NDSU-11, FFO-96, EMI-L4, F312, IS-280; judgement where none is published",
  find: (context) =>
    sectionsUsed(context).flatMap((section) => {
      const { greatestM, source, note } = section.limit;
      if (greatestM === null) return [];
      const excessM = (i: number) =>
        builtAs(context, i) === section ? leastGreatestM(context, i) - greatestM - 1e-9 : 0;
      return toldAlong(context, excessM).map(({ stretch, where, lengthM }) => ({
        severity: "stop",
        stretch,
        sample: stretch.worst,
        source,
        message: `${where}: ${inSentence(section.name)}, up to ${lengthWords(leastGreatestM(context, stretch.worst))} high on ${distanceWords(lengthM)}, over its limit of ${lengthWords(greatestM)}. ${note}`,
        remedy:
          "Choose another section for this reach, or lead it over higher ground. If there is neither, ask a licensed engineer.",
      }));
    }),
};

/** What each section other than the standard one asks for. */
export const sectionCautions: Rule = {
  id: "section-cautions",
  rule: "Each section is built as its sources ask.",
  source: "NDSU-11, DWR-03, FFO-96, EMI-L4, IS-280, IL-RET; common practice, no source",
  find: (context) =>
    sectionsUsed(context).flatMap((section): Finding[] => {
      if (section.cautions.length === 0) return [];
      const first = firstSampleAs(context, section);
      return [
        {
          severity: "note",
          stretch: null,
          chainageM: context.trace.chainageM[first]!,
          sample: first,
          source: section.source,
          message: `${section.name}, ${reachesWords(context, section)}: ${inSentence(section.words)}`,
          remedy: section.cautions.join(" "),
        },
      ];
    }),
};

/** Where one section ends against another. */
export const sectionsMeet: Rule = {
  id: "sections-meet",
  rule: "Where two sections meet they are lapped and tied, so that no seam is left open.",
  source: "common practice, no source",
  find: (context) =>
    meetings(context).map(({ before, after, sample }) => ({
      severity: "caution",
      stretch: null,
      chainageM: context.trace.chainageM[sample]!,
      sample,
      message: `${stationWords(context.trace.chainageM[sample]!)}: here ${inSentence(before.section.name)} meets ${inSentence(after.section.name)}. A seam between two sections is where water finds its way first; the bags of the lap are not in the count.`,
      remedy:
        "Run the wider one past the end of the other and lap them on its water side, key bags into both, carry the sheet over the seam, and watch it.",
    })),
};

/** Walls that stand by what braces them. */
export const bracingNotReckoned: Rule = {
  id: "bracing-not-reckoned",
  rule: "What stands by its bracing is judged by somebody who can reckon it.",
  source: "judgement; FEMA P-259, from memory",
  find: (context) => {
    if (!context.cuts.reaches.some(({ section }) => section.standsBy === "bracing")) return [];
    const severityAt = (i: number) =>
      builtAs(context, i).standsBy === "bracing" && context.cuts.heightM[i]! > 0
        ? context.cuts.heightM[i]!
        : 0;
    return toldAlong(context, severityAt).map(({ stretch, where, lengthM }) => ({
      severity: "caution",
      stretch,
      sample: stretch.worst,
      message: `${where}: ${inSentence(builtAs(context, stretch.worst).name)} on ${distanceWords(lengthM)} stands by its bracing, which is not reckoned here: no factor against sliding or overturning is given, and the weakest place of the line is sought without it.`,
      remedy:
        "Have a licensed engineer size posts, braces and stakes for the water and the ground here, as the local code asks, or choose a section that stands by its weight.",
    }));
  },
};

/** Work that the hours leave out. */
export const carpentry: Rule = {
  id: "carpentry",
  rule: "People's time covers all of the work.",
  source: "judgement",
  find: ({ totals }) => {
    const { plywoodSheets, lumberM, stakes } = totals.materials;
    if (plywoodSheets + lumberM + stakes === 0) return [];
    return ofWholePlan(
      "note",
      "The hours count bags, sand and earth. Cutting, staking, nailing and bracing of boards are not in them.",
      "Set a carpentry crew and its time beside the people of the plan; no rate for it is published here.",
    );
  },
};

function toldAlong(context: CheckContext, severityAt: (sample: number) => number) {
  const { plan, line, trace } = context;
  const stretches = stretchesOf(trace, line.closed, plan.practice.stationIntervalM, severityAt);
  return toldOf(stretches, severityAt);
}

function builtAs({ cuts }: CheckContext, sample: number): EmergencySection {
  return cuts.reaches[cuts.reach[sample]!]!.section;
}

function firstSampleAs(context: CheckContext, section: EmergencySection): number {
  const { heightM } = context.cuts;
  return heightM.findIndex((m, i) => m > 0 && builtAs(context, i) === section);
}

/** Sections of which something is built, in the order of the line. */
function sectionsUsed(context: CheckContext): EmergencySection[] {
  const sections = new Set(context.cuts.reaches.map(({ section }) => section));
  return [...sections].filter((section) => firstSampleAs(context, section) >= 0);
}

function reachesWords({ breaksM, line, cuts }: CheckContext, section: EmergencySection): string {
  const marks = [0, ...breaksM, line.lengthM];
  const from = (i: number) => `${stationWords(marks[i]!)} to ${stationWords(marks[i + 1]!)}`;
  const own = cuts.reaches.flatMap((reach, i) => (reach.section === section ? [from(i)] : []));
  return own.length === cuts.reaches.length ? "the whole line" : own.join(", ");
}

interface Meeting {
  readonly before: BuiltReach;
  readonly after: BuiltReach;
  readonly sample: number;
}

/** Places where what is built changes from one section to another; a ring's closing point among them. */
function meetings({ line, trace, cuts }: CheckContext): Meeting[] {
  const { pieces } = trace;
  const last = pieces.at(-1)!;
  const pairs: [TracePiece, TracePiece][] = pieces.slice(1).map((piece, i) => [pieces[i]!, piece]);
  if (line.closed) pairs.push([last, pieces[0]!]);
  return pairs.flatMap(([ends, begins]) => {
    const [before, after] = [cuts.reaches[ends.reach]!, cuts.reaches[begins.reach]!];
    const built = cuts.heightM[ends.last]! > 0 && cuts.heightM[begins.first]! > 0;
    return before.section !== after.section && built
      ? [{ before, after, sample: begins.first }]
      : [];
  });
}

/** A name or sentence to go on with after a colon or in the middle of a sentence. */
function inSentence(words: string): string {
  return `${words[0]!.toLowerCase()}${words.slice(1)}`;
}
