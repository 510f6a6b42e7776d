import { elevationWords, lengthWords } from "../checks/words.ts";
import { formatArea, formatCount } from "../units.ts";
import type { TraceRule, WaterContext } from "./trace-rule.ts";

/** Structures that need no levee at this level. */
export const notReached: TraceRule<WaterContext> = {
  id: "not-reached",
  rule: "A levee is built where the forecast water would reach a structure.",
  source: "judgement",
  find: ({ groundRmseM, structures }) =>
    structures
      .filter(({ wet, marginM, sillM }) => wet === false && marginM !== null && sillM !== null)
      .map(({ name, marginM, sillM, sillAt }) => ({
        severity: marginM! < groundRmseM ? "caution" : "note",
        at: sillAt,
        message: `The forecast water does not reach "${name}" over the ground: it would above ${elevationWords(sillM!)}, ${lengthWords(marginM!)} higher${marginM! < groundRmseM ? `, which is less than the accuracy of the ground, ±${lengthWords(groundRmseM)}` : ""}.`,
        remedy:
          "Look for culverts, drains and ditches that the raster does not show before relying on it.",
      })),
};

/** Structures that cannot be judged. */
export const offGround: TraceRule<WaterContext> = {
  id: "structure-off-ground",
  rule: "Every structure lies on the ground that is open.",
  source: "judgement",
  find: ({ plan, structures }) =>
    structures.flatMap(({ name, wet }, i) =>
      wet === null
        ? [
            {
              severity: "caution",
              at: plan.structures[i]?.outline[0] ?? null,
              message: `"${name}" lies outside the ground: whether water reaches it is not known.`,
              remedy: "Open a raster that covers it.",
            },
          ]
        : [],
    ),
};

/** Marked sources from which no water comes. */
export const idleSource: TraceRule<WaterContext> = {
  id: "idle-source",
  rule: "A marked source lies on the ground, below the forecast water.",
  source: "judgement",
  find: ({ sources }) =>
    sources
      .filter(({ state }) => state !== "wet")
      .map(({ name, at, state, groundM }) => ({
        severity: "caution",
        at,
        message:
          state === "dry"
            ? `No water comes from the source "${name}": its ground at ${elevationWords(groundM ?? Number.NaN)} is not below the forecast water.`
            : `The source "${name}" lies outside the ground: water is taken to come over every low edge instead.`,
        remedy: "Put the mark in the river.",
      })),
};

/** A forecast that wets nothing. */
export const noWater: TraceRule<WaterContext> = {
  id: "no-water",
  rule: "The forecast water covers some of the ground.",
  source: "judgement",
  find: ({ water }) =>
    water.cells + water.holeCells > 0
      ? []
      : [
          {
            severity: "caution",
            at: null,
            message: `No ground is under connected water at ${elevationWords(water.elevationM)}.`,
            remedy:
              "Check stage, gauge zero, datum and unit of the raster; where a source is marked, its place.",
          },
        ],
};

/** Low ground that stays dry only because of what the raster shows. */
export const lowUnconnected: TraceRule<WaterContext> = {
  id: "low-unconnected",
  rule: "Ground below the surface that no water reaches over the ground may fill through culverts, drains or the soil.",
  source: "common practice, no source",
  find: ({ water }) =>
    water.lowCells > 0
      ? [
          {
            severity: "note",
            at: null,
            message: `${formatArea(water.lowAreaM2, "us")} (${formatArea(water.lowAreaM2, "metric")}) of ground is below the water but not joined to it.`,
            remedy: "Close culverts and drains that lead there, and watch it for seepage.",
          },
        ]
      : [],
};

/** Ground that is not known under the water. */
export const holeReached: TraceRule<WaterContext> = {
  id: "hole-reached",
  rule: "Ground that is not known lets water through and is counted in no area.",
  source: "judgement",
  find: ({ water }) =>
    water.holeCells > 0
      ? [
          {
            severity: "note",
            at: null,
            message: `The water reaches ${formatCount(water.holeCells)} cells without data; it is taken to pass through them.`,
            remedy: "Where such a hole lies between river and structure, level its ground.",
          },
        ]
      : [],
};

/** Ground too large to be traced cell by cell. */
export const coarseTrace: TraceRule<WaterContext> = {
  id: "coarse-trace",
  rule: "Water is traced on every cell of the raster up to 16.8 million of them.",
  source: "judgement",
  find: ({ water }) =>
    water.everyCell
      ? []
      : [
          {
            severity: "note",
            at: null,
            message: `The ground is too large to follow the water cell by cell: its area, its volume and its picture are of cells of ${lengthWords(water.cellM)}. Structures and lines are traced on the raster's own cells about the plan, where every low edge of that part counts as water.`,
            remedy: "Cut the raster to the surroundings of the plan for the finest picture.",
          },
        ],
};
