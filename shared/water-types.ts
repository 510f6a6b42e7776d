import type { FoundCandidates } from "./pipes/candidates.ts";
import type { Drain, LonLat, Plan } from "./plan.ts";
import type { Check } from "./sizing-types.ts";

/** Codes of cells in a {@link WetMask}. Ground above the water. */
export const DRY = 0;
/** Below the water surface, but water from the sources does not reach it over the ground. */
export const LOW = 1;
/** Below the surface and connected with a source. */
export const WATER = 2;
/** Ground not known (a hole in the data) that water reaches. */
export const HOLE_REACHED = 3;
/** Would be under water, and is kept dry by the chosen line. */
export const BEHIND_LINE = 4;

export interface TraceWaterRequest {
  readonly plan: Plan;
  /** Alternatives to trace; all of them when left out. */
  readonly ids?: readonly string[];
}

/** Water at the forecast level with no levee built. */
export interface TracedWater {
  /** Surface at the gauge, metres. */
  readonly elevationM: number;
  /** Where water comes from: the low edges of the ground, marked sources, or both. */
  readonly from: "edges" | "sources" | "both";
  /** Cells of known ground under connected water. */
  readonly cells: number;
  readonly areaM2: number;
  readonly volumeM3: number;
  /** Ground below the surface that connected water does not reach. */
  readonly lowCells: number;
  readonly lowAreaM2: number;
  /** Cells of unknown ground that water reaches: in no area and no volume. */
  readonly holeCells: number;
  /** Of `cells`, those that water reaches only through unknown ground: whether it gets there is not known. */
  readonly throughHoleCells: number;
  /** Shorter side of a cell, metres. */
  readonly cellM: number;
  /** False when the ground has too many cells, so that area and volume are of coarser ones. */
  readonly everyCell: boolean;
  /** Whether buildings and lines are traced on cells that show a levee; false: what is inside a ring is not known. */
  readonly resolvesLines: boolean;
}

/** A marked source as the trace found it. */
export interface TracedSource {
  readonly id: string;
  readonly name: string;
  readonly at: LonLat;
  /** `wet`: its ground is below the surface (or unknown); `dry`: above; `outside`: not on the ground that is traced. */
  readonly state: "wet" | "dry" | "outside";
  /** Null in a hole and outside the ground. */
  readonly groundM: number | null;
}

/** A culvert or drain as the trace found it. */
export interface TracedPipe {
  readonly id: string;
  readonly name: string;
  readonly kind: "culvert" | Drain["kind"];
  /** The end with the higher invert; a drain's own place. */
  readonly at: LonLat;
  readonly plugged: boolean;
  /** False where an invert is neither typed nor on known ground, or nobody said whether a drain joins outside. */
  readonly isKnown: boolean;
  /** Inverts as taken, typed or of the ground, null where not known; null for a drain. */
  readonly invertsM: readonly [number | null, number | null] | null;
  /** Water-surface elevation above which water passes; null when not known, and for a drain that joins nothing. */
  readonly passesAboveM: number | null;
  /** Ground at a drain; null for a culvert and in a hole. */
  readonly groundM: number | null;
}

/** An exit road, and when it first floods with nothing built. */
export interface TracedRoad {
  readonly id: string;
  readonly name: string;
  /** False where that is not known: a gap in the elevation data, or a pipe, decides. */
  readonly isKnown: boolean;
  /** Water-surface elevation where it floods first; null when not known, or when no water reaches it. */
  readonly floodsAboveM: number | null;
  readonly at: LonLat | null;
  /** That water at the gauge: elevation, and stage where the plan gives its water by stage. */
  readonly gaugeM: number | null;
  readonly stageM: number | null;
  /** When the likely forecast passes it, `2026-04-08T11:00-05:00`; null without one, and where it never does. */
  readonly hour: string | null;
  /** True where the likely forecast begins above it: that is its first hour. */
  readonly fromStart: boolean;
  /** Whether people are set to leave by then; null where that is not known. */
  readonly leavesBefore: boolean | null;
}

/** Whether water reaches a structure, and from which level on. */
export interface Reached {
  readonly id: string;
  readonly name: string;
  /** Null when the structure does not lie on the ground. */
  readonly wet: boolean | null;
  /**
   * Lowest water-surface elevation at which water from outside reaches the structure (it must stand
   * higher than this), where it would come in first, metres; null when no water can reach it, or when
   * nothing but unknown ground lies between.
   */
  readonly sillM: number | null;
  readonly sillAt: LonLat | null;
  /** Sill above the forecast surface at that place, metres; negative when wet. */
  readonly marginM: number | null;
  /** Set when a hole decides: if its ground held water back, the sill would be higher. */
  readonly throughHole: {
    /** Place in the hole, the last before the structure. */
    readonly at: LonLat;
    /** True when the structure is wet, and would be dry if holes held water back. */
    readonly alone: boolean;
  } | null;
  /** Set when open pipes let water in at a lower level than ground and levee do. */
  readonly throughPipe: ThroughPipe | null;
}

/** What open pipes do to a structure. */
export interface ThroughPipe {
  /** Culverts and drains that must all be plugged to keep the water back as long as ground and levee do. */
  readonly ids: readonly string[];
  /** True when the structure is wet, and would be dry with these plugged. */
  readonly alone: boolean;
  /** False where that hangs on a pipe of which an invert, or where it leads, is not known. */
  readonly isKnown: boolean;
  /** Sill with all pipes plugged; null when no water could reach it then. */
  readonly pluggedSillM: number | null;
}

/** A structure with no levee built. */
export interface TracedStructure extends Reached {
  /** Deepest forecast water at its outline; null when it stays dry or lies off the ground. */
  readonly depthM: number | null;
  /** Level of the sized-for water above its floor, negative below it; null when the floor is not known or it lies off the ground. */
  readonly overFloorM: number | null;
  /** True where it is dry as traced, and wet if there is an open pipe where there may be a culvert. */
  readonly wetIfCulvert: boolean;
}

/** What open pipes where there may be culverts do to a line that keeps all water out as traced. */
export interface TracedLineIfCulverts {
  /** Ids of what they bring the sized-for water to. */
  readonly reaches: readonly string[];
  /** Water-surface elevation at which water first comes in then, and that rise of the river over the sized-for water. */
  readonly elevationM: number;
  readonly riseM: number;
}

/** A place where water passes, seen from a line. */
export interface Passage {
  readonly at: LonLat;
  /** Null in a hole. */
  readonly groundM: number | null;
  /** Nearest station of the line; the end's own where `end` names one. */
  readonly chainageM: number;
  readonly fromLineM: number;
  /** Which end of an open line it is round, three cells of it included; null when neither. */
  readonly end: "start" | "end" | null;
}

/** How water gets to a structure that the line is meant to keep dry. */
export interface WayIn extends Passage {
  readonly structureId: string;
  /** Culverts and drains on that way. */
  readonly through: readonly string[];
  /** From the source to the structure. */
  readonly path: readonly LonLat[];
}

/** Where a rising river comes in first. */
export interface FirstOver extends Passage {
  readonly structureId: string;
  /** Water-surface elevation there when it comes in. */
  readonly elevationM: number;
  /** Rise of the river above the forecast. */
  readonly riseM: number;
  /** Stage at the gauge; null when the water is given as an elevation. */
  readonly stageM: number | null;
  readonly over: "crest" | "ground";
}

/** When a place on the line is overtopped by a rising river. */
export interface Overtopping {
  readonly chainageM: number;
  /** Rise of the river above the forecast. */
  readonly riseM: number;
  /** Water-surface elevation there. */
  readonly elevationM: number;
  readonly groundM: number | null;
  readonly over: "crest" | "ground";
}

/** Whether everything that a line is for stays dry at the forecast. */
export interface DryVerdict {
  /** False when water reaches any of it over known ground; null when it is not known. */
  readonly dry: boolean | null;
  /** Why it is not known, with the place where that shows; null when it is known. */
  readonly notKnown: {
    /**
     * `no-building`: it is for none; `building-off-data`: one lies off the elevation data; `hole-in-the-way`:
     * water comes in over a hole alone; `hole-under-line`: the line itself runs over a hole or off the data;
     * `pipe-not-known`: water comes in only by a pipe whose invert, or where it leads, is not known, or one that ends
     * under the line;
     * `no-water`: no ground around the plan is under water; `coarse-cells`: it is traced on cells larger than a levee.
     */
    readonly because:
      | ("no-building" | "building-off-data" | "hole-in-the-way" | "hole-under-line")
      | ("no-water" | "coarse-cells" | "pipe-not-known");
    readonly at: LonLat | null;
  } | null;
}

/** The water with one alternative built to its crest. */
export interface TracedAlternative extends DryVerdict {
  readonly id: string;
  readonly name: string;
  readonly kind: "ring" | "line";
  /** Structures it is for: those in the ring (all when it holds none), or all for an open line. */
  readonly structures: readonly Reached[];
  /** Structures it is not for that the water reaches with it built too. */
  readonly leftWet: readonly string[];
  readonly wayIn: WayIn | null;
  /** Null when no water can come in at any level, the way leads over unknown ground alone, or no ground is under water. */
  readonly firstOver: FirstOver | null;
  /** Ground that would be under connected water and is not with the line, the line itself left out. */
  readonly notReachedCells: number;
  readonly notReachedAreaM2: number;
  readonly notReachedVolumeM3: number;
  /** Places at the station interval and the corners, in the order a rising river goes over them. */
  readonly overtopping: readonly Overtopping[];
  /** Marked sources that lie behind the line. */
  readonly sourcesInside: readonly string[];
  /** Where the line crosses water as it stood when the ground was surveyed, chainages; needs a marked source. */
  readonly inWaterM: readonly { readonly fromM: number; readonly toM: number }[];
  /** Both cases of all culverts and drains; null where the plan has none. */
  readonly pipes: { readonly plugged: PipeCase; readonly open: PipeCase } | null;
  /** Set where places at which there may be a culvert decide. */
  readonly ifCulverts: TracedLineIfCulverts | null;
  readonly checks: readonly Check[];
}

/** What a line does with every culvert and drain plugged, or with none. */
export interface PipeCase extends DryVerdict {
  /** Water-surface elevation at which water first comes in. */
  readonly firstOverM: number | null;
  /** Rise of the river above the sized-for water at which it does. */
  readonly firstOverRiseM: number | null;
}

/** A picture of the water over the ground, rows from the north-west as the raster has them. */
export interface WetMask {
  readonly columns: number;
  readonly rows: number;
  /** One code a cell: `DRY`, `LOW`, `WATER`, `HOLE_REACHED`, `BEHIND_LINE` (for the chosen alternative). */
  readonly codes: Uint8Array;
  /** Outer corners, from the first cell's clockwise as the raster is written (upper left first). */
  readonly corners: readonly [LonLat, LonLat, LonLat, LonLat];
}

export interface WaterTrace {
  readonly water: TracedWater;
  readonly sources: readonly TracedSource[];
  readonly pipes: readonly TracedPipe[];
  readonly roads: readonly TracedRoad[];
  readonly possibleCulverts: FoundCandidates;
  readonly structures: readonly TracedStructure[];
  readonly alternatives: readonly TracedAlternative[];
  readonly mask: WetMask;
  /** On large ground, where `mask` is of coarser cells: the plan's surroundings in their own, blank in `mask`. */
  readonly nearMask: WetMask | null;
  /** Checks that speak of the whole plan; each alternative has its own beside these. */
  readonly checks: readonly Check[];
}
