import { leastHeight } from "../cut-walk.ts";
import type { SamplePiece } from "../line-samples.ts";
import type { BuiltReach } from "../sections/built-reach.ts";
import type { EmergencySection } from "../sections/types.ts";
import { PYRAMID } from "../sections.ts";
import { listStretches } from "./listed.ts";
import { type CheckContext, ofSample, ofStretch, ofWholePlan, type Rule } from "./rule.ts";
import { stretchesOf } from "./stretch.ts";

/** Levee types by their id; metres. */
export type TypeFinding =
  | {
      readonly kind: "type-limit";
      readonly typeId: string;
      readonly heightM: number;
      readonly limitM: number;
      readonly lengthM: number;
    }
  | {
      readonly kind: "type-cautions";
      readonly typeId: string;
      /** Stretches that are built as this type, from and to; empty = the whole line. */
      readonly reachesM: readonly (readonly [number, number])[];
    }
  | { readonly kind: "types-meet"; readonly beforeId: string; readonly afterId: string }
  | { readonly kind: "bracing-not-calculated"; readonly typeId: string; readonly lengthM: number }
  | { readonly kind: "carpentry" };

/** Heights over what a section other than the pyramid may be built to. */
export const typeLimit: Rule = {
  id: "type-limit",
  find: (context) =>
    sectionsUsed(context).flatMap((section) => {
      const { limitM } = section;
      if (limitM === null) return [];
      const excessM = (i: number) =>
        builtAs(context, i) === section ? leastHeight(context.cuts, i) - limitM - 1e-9 : 0;
      return listAlong(context, excessM).map((listed) => {
        const heightM = leastHeight(context.cuts, listed.stretch.worst);
        const figures = { heightM, limitM, lengthM: listed.lengthM };
        return ofStretch("stop", listed, { kind: "type-limit", typeId: section.id, ...figures });
      });
    }),
};

/** What each section other than the standard one asks for. */
export const typeCautions: Rule = {
  id: "type-cautions",
  find: (context) =>
    sectionsUsed(context)
      .filter((section) => section !== PYRAMID)
      .map((section) => {
        const reachesM = reachesOf(context, section);
        const finding = { kind: "type-cautions", typeId: section.id, reachesM } as const;
        const found = ofSample("note", context, firstSampleAs(context, section), finding);
        return { ...found, where: null };
      }),
};

/** Where one section ends against another. */
export const typesMeet: Rule = {
  id: "types-meet",
  find: (context) =>
    meetings(context).map(({ before, after, sample }) => {
      const [beforeId, afterId] = [before.section.id, after.section.id];
      return ofSample("caution", context, sample, { kind: "types-meet", beforeId, afterId });
    }),
};

/** Walls whose bracing carries the water, which is not calculated. */
export const bracingNotCalculated: Rule = {
  id: "bracing-not-calculated",
  find: (context) => {
    if (!context.cuts.reaches.some(({ section }) => section.carriedBy === "bracing")) return [];
    const severityAt = (i: number) =>
      builtAs(context, i).carriedBy === "bracing" && context.cuts.heightM[i]! > 0
        ? context.cuts.heightM[i]!
        : 0;
    return listAlong(context, severityAt).map((listed) => {
      const typeId = builtAs(context, listed.stretch.worst).id;
      const { lengthM } = listed;
      return ofStretch("caution", listed, { kind: "bracing-not-calculated", typeId, lengthM });
    });
  },
};

/** Work that the hours leave out. */
export const carpentry: Rule = {
  id: "carpentry",
  find: ({ totals }) => {
    const { plywoodSheets, lumberPieces, boardPieces, stakes } = totals.materials;
    if (plywoodSheets + lumberPieces + boardPieces + stakes === 0) return [];
    return ofWholePlan("note", { kind: "carpentry" });
  },
};

function listAlong(context: CheckContext, severityAt: (sample: number) => number) {
  const { plan, line, samples } = context;
  const stretches = stretchesOf(samples, line.closed, plan.practice.stationIntervalM, severityAt);
  return listStretches(stretches, severityAt);
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

/** From and to of each stretch that is built as a type; empty where that is the whole line. */
function reachesOf(
  { breaksM, line, cuts }: CheckContext,
  section: EmergencySection,
): [number, number][] {
  const marks = [0, ...breaksM, line.lengthM];
  const own = cuts.reaches.flatMap((reach, i): [number, number][] =>
    reach.section === section ? [[marks[i]!, marks[i + 1]!]] : [],
  );
  return own.length === cuts.reaches.length ? [] : own;
}

interface Meeting {
  readonly before: BuiltReach;
  readonly after: BuiltReach;
  readonly sample: number;
}

/** Places where what is built changes from one section to another; a ring's closing point among them. */
function meetings({ line, samples, cuts }: CheckContext): Meeting[] {
  const { pieces } = samples;
  const last = pieces.at(-1)!;
  const pairs: [SamplePiece, SamplePiece][] = pieces
    .slice(1)
    .map((piece, i) => [pieces[i]!, piece]);
  if (line.closed) pairs.push([last, pieces[0]!]);
  return pairs.flatMap(([ends, begins]) => {
    const [before, after] = [cuts.reaches[ends.reach]!, cuts.reaches[begins.reach]!];
    const built = cuts.heightM[ends.last]! > 0 && cuts.heightM[begins.first]! > 0;
    return before.section !== after.section && built
      ? [{ before, after, sample: begins.first }]
      : [];
  });
}
