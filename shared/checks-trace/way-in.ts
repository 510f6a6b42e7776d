import { FAR_M } from "../level-doubt.ts";
import { isProtected } from "../protected.ts";
import type { FirstOver, Passage } from "../water-types.ts";
import { type LineContext, nameOf, type TraceFinding, type TraceRule } from "./trace-rule.ts";

/** Nearer to the line than this is at it, metres. */
const AT_LINE_M = 3;

/** Where water gets past a line: at a station, round an end, or beside the line. Metres. */
export interface PassagePlace {
  readonly chainageM: number;
  readonly roundEnd: boolean;
  /** How far it is from the line; 0 where it is at the line. */
  readonly besideM: number;
  /** Ground the water comes over; null where it is not known. */
  readonly groundM: number | null;
}

/** Names are as the person typed them, null for the ground inside a ring without a building; metres. */
export type WayInFinding =
  | {
      readonly kind: "water-gets-in";
      readonly place: PassagePlace;
      readonly reaches: string | null;
      /** Names of the culverts and drains on the way. */
      readonly through: readonly string[];
      readonly line: "ring" | "line";
    }
  | {
      /** Whether it is reached is not known; or it is reached earlier if the ground is low there. */
      readonly kind: "hole-decides" | "hole-may-be-lower";
      readonly reaches: string | null;
    }
  | {
      readonly kind: "overtops";
      readonly stageM: number | null;
      readonly elevationM: number;
      readonly aboveSizedForM: number;
      readonly over: "top" | "ground";
      readonly place: PassagePlace;
      /** True where the ground lets water in before the top of levee does. */
      readonly early: boolean;
      readonly line: "ring" | "line";
    }
  | {
      readonly kind: "building-wet";
      readonly building: string;
      readonly depthM: number | null;
      readonly leftByChoice: boolean;
    }
  | { readonly kind: "if-it-fails"; readonly building: string; readonly depthM: number }
  | { readonly kind: "source-inside"; readonly source: string }
  | { readonly kind: "crosses-water"; readonly lengthM: number };

/** Water that gets to what the line is for, but for what comes through pipes alone. */
export const waterGetsIn: TraceRule<LineContext> = {
  id: "water-gets-in",
  find: (context) => {
    const { wayIn, structures, kind: line } = context.line;
    const aim = structures.find(({ id }) => id === wayIn?.structureId);
    if (!wayIn || aim?.throughPipe?.alone) return [];
    const reaches = nameOf(context, wayIn.structureId);
    const through = context.pipes
      .filter(({ id }) => wayIn.through.includes(id))
      .map(({ name }) => name);
    const place = placeOf(wayIn);
    const finding = { kind: "water-gets-in", place, reaches, through, line } as const;
    return [{ severity: "stop", fromM: wayIn.chainageM, at: wayIn.at, finding }];
  },
};

/** Water that can get in only over ground that is not known. */
export const entersThroughHole: TraceRule<LineContext> = {
  id: "enters-through-hole",
  find: (context) =>
    context.line.structures.flatMap(({ id, throughHole, wet }): TraceFinding[] => {
      if (!throughHole) return [];
      const { at, alone } = throughHole;
      const reaches = nameOf(context, id);
      if (alone) return [{ severity: "stop", at, finding: { kind: "hole-decides", reaches } }];
      if (wet) return [];
      return [{ severity: "caution", at, finding: { kind: "hole-may-be-lower", reaches } }];
    }),
};

/** Where and at which level a rising river first gets in; not said where water and ground cannot belong together. */
export const overtopsAt: TraceRule<LineContext> = {
  id: "overtops",
  find: ({ plan, line }) => {
    const { firstOver, dry } = line;
    if (!firstOver || dry !== true || firstOver.riseM > FAR_M) return [];
    const early = firstOver.riseM < plan.water.freeboardM - 0.005;
    const { stageM, elevationM, riseM, chainageM, at } = firstOver;
    return [
      {
        severity: early ? "caution" : "note",
        fromM: chainageM,
        at,
        finding: {
          kind: "overtops",
          ...{ stageM, elevationM, aboveSizedForM: riseM, early },
          over: firstOver.over === "crest" ? "top" : "ground",
          ...{ place: placeOf(firstOver), line: line.kind },
        },
      },
    ];
  },
};

/** Structures beside the line. */
export const structureWetAnyway: TraceRule<LineContext> = {
  id: "building-wet",
  find: ({ plan, line, structures }) =>
    structures
      .filter(({ id }) => line.leftWet.includes(id))
      .map(({ id, name: building, depthM, sillAt }) => {
        const leftByChoice = plan.structures.some((each) => each.id === id && !isProtected(each));
        const finding = { kind: "building-wet", building, depthM, leftByChoice } as const;
        return { severity: leftByChoice ? "note" : "caution", at: sillAt, finding };
      }),
};

/** What a failure would mean. */
export const ifItFails: TraceRule<LineContext> = {
  id: "if-it-fails",
  find: ({ line, structures }) => {
    const protectedIds = new Set(
      line.structures.filter(({ wet }) => wet === false).map(({ id }) => id),
    );
    const deep = structures.filter(({ id, depthM }) => protectedIds.has(id) && depthM !== null);
    if (deep.length === 0) return [];
    const worst = deep.reduce((most, each) => (each.depthM! > most.depthM! ? each : most));
    const finding = { kind: "if-it-fails", building: worst.name, depthM: worst.depthM! } as const;
    return [{ severity: "caution", at: null, finding }];
  },
};

/** A ring with the river in it. */
export const sourceInside: TraceRule<LineContext> = {
  id: "source-inside",
  find: ({ plan, line }) =>
    (plan.sources ?? [])
      .filter(({ id }) => line.sourcesInside.includes(id))
      .map(({ name: source, at }) => ({
        ...{ severity: "stop", at },
        finding: { kind: "source-inside", source },
      })),
};

/** A line through water that is there before any flood. */
export const crossesWater: TraceRule<LineContext> = {
  id: "crosses-water",
  find: ({ line }) =>
    line.inWaterM.map(({ fromM, toM }) => ({
      ...{ severity: "stop", fromM, toM, at: null },
      finding: { kind: "crosses-water", lengthM: toM - fromM },
    })),
};

function placeOf(passage: Passage | FirstOver): PassagePlace {
  const { chainageM, fromLineM, end, groundM } = passage;
  return {
    ...{ chainageM, groundM, roundEnd: end !== null },
    besideM: fromLineM > AT_LINE_M ? fromLineM : 0,
  };
}
