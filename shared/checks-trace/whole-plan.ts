import type { TracedWater } from "../water-types.ts";
import type { TraceRule, WaterContext } from "./trace-rule.ts";

/** Names are as the person typed them; metres. */
export type WholePlanFinding =
  | {
      readonly kind: "not-reached";
      readonly building: string;
      /** Level above which the water reaches it, and how far that is above the sized-for water. */
      readonly sillM: number;
      readonly marginM: number;
      /** Accuracy of the ground (RMSE). */
      readonly rmseM: number;
    }
  | { readonly kind: "building-off-data"; readonly building: string }
  | {
      readonly kind: "source-above-water";
      readonly source: string;
      readonly groundM: number | null;
    }
  | { readonly kind: "source-off-data"; readonly source: string }
  | { readonly kind: "no-water"; readonly waterM: number }
  | { readonly kind: "low-unconnected"; readonly areaM2: number }
  | {
      readonly kind: "hole-reached";
      readonly holeCells: number;
      /** Cells with data that the water reaches only through holes. */
      readonly throughHoleCells: number;
      readonly cells: number;
    }
  | { readonly kind: "coarse-trace"; readonly cellM: number; readonly resolvesLines: boolean };

/** Whether the water covers any ground; where it covers none, water and elevation data do not belong together. */
export function isAnyWater({
  cells,
  holeCells,
}: Pick<TracedWater, "cells" | "holeCells">): boolean {
  return cells + holeCells > 0;
}

/** Structures that need no levee at this level. */
export const notReached: TraceRule<WaterContext> = {
  id: "not-reached",
  find: ({ groundRmseM: rmseM, structures }) =>
    structures
      .filter(({ wet, marginM, sillM }) => wet === false && marginM !== null && sillM !== null)
      .map(({ name: building, marginM, sillM, sillAt }) => ({
        severity: marginM! < rmseM ? "caution" : "note",
        at: sillAt,
        finding: { kind: "not-reached", building, sillM: sillM!, marginM: marginM!, rmseM },
      })),
};

/** Structures that cannot be judged. */
export const offGround: TraceRule<WaterContext> = {
  id: "building-off-data",
  find: ({ plan, structures, water }) =>
    structures.flatMap(({ name: building, wet }, i) => {
      const at = plan.structures[i]?.outline[0] ?? null;
      const finding = { kind: "building-off-data", building } as const;
      return wet === null && isAnyWater(water) ? [{ severity: "caution", at, finding }] : [];
    }),
};

/** Marked sources from which no water comes. */
export const idleSource: TraceRule<WaterContext> = {
  id: "idle-source",
  find: ({ sources }) =>
    sources
      .filter(({ state }) => state !== "wet")
      .map(({ name: source, at, state, groundM }) => ({
        ...{ severity: "caution", at },
        finding:
          state === "dry"
            ? { kind: "source-above-water", source, groundM }
            : { kind: "source-off-data", source },
      })),
};

/** Water that covers nothing. */
export const noWater: TraceRule<WaterContext> = {
  id: "no-water",
  find: ({ water }) => {
    if (isAnyWater(water)) return [];
    const finding = { kind: "no-water", waterM: water.elevationM } as const;
    return [{ severity: "stop", at: null, finding }];
  },
};

/** Low ground that no water reaches only because of what the raster shows. */
export const lowUnconnected: TraceRule<WaterContext> = {
  id: "low-unconnected",
  find: ({ water }) => {
    if (water.lowCells === 0) return [];
    const finding = { kind: "low-unconnected", areaM2: water.lowAreaM2 } as const;
    return [{ severity: "note", at: null, finding }];
  },
};

/** Ground that is not known under the water. */
export const holeReached: TraceRule<WaterContext> = {
  id: "hole-reached",
  find: ({ water }) => {
    const { cells, holeCells, throughHoleCells } = water;
    if (holeCells === 0) return [];
    const finding = { kind: "hole-reached", holeCells, throughHoleCells, cells } as const;
    return [{ severity: throughHoleCells > 0 ? "caution" : "note", at: null, finding }];
  },
};

/** Ground too large to be traced cell by cell. */
export const coarseTrace: TraceRule<WaterContext> = {
  id: "coarse-trace",
  find: ({ water }) => {
    if (water.everyCell) return [];
    const { cellM, resolvesLines } = water;
    const finding = { kind: "coarse-trace", cellM, resolvesLines } as const;
    return [{ severity: resolvesLines ? "note" : "caution", at: null, finding }];
  },
};
