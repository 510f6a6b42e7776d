import type { GroundSampler } from "../../shared/ground.ts";
import type { FoundTieIn, SearchNote } from "../../shared/search-types.ts";

/** A point on the plan plane, metres. */
export type Point = readonly [number, number];

/** A polygon on the plan plane, not closed (first corner is not repeated), either winding. */
export type Outline = readonly Point[];

/** What a levee section costs and takes, whatever section is chosen. */
export interface SectionModel {
  /** Placed area on level ground at a height, m2; 0 at and below 0, never falling with height. */
  areaAt(heightM: number): number;
  /** Distance from the centre line to a toe on level ground, metres; 0 at and below 0. */
  halfBaseAt(heightM: number): number;
  /**
   * The section cut by the ground across the line: along the unit normal (leftX, leftY) at (xM, yM).
   * Left out, the ground is taken as level across.
   */
  cut?(xM: number, yM: number, leftX: number, leftY: number, crestM: number): SectionCut;
}

/** One cut across the line; NaN where needed ground is missing. The object may be reused by the next cut. */
interface SectionCut {
  readonly areaM2: number;
  /** Lowest ground under the base, metres. */
  readonly lowestM: number;
  readonly toeLeftM: number;
  readonly toeRightM: number;
}

/** Rules a found line keeps. */
interface SearchRule {
  /** Clear distance from a structure to the landside toe, metres. */
  readonly setbackM: number;
  /** Height limit, metres. Above it a steep price, so that there is always an answer. */
  readonly limitM: number;
  /** Length of line carried on into ground at the crest where a piece ties in, metres. */
  readonly keyInM: number;
  /** Kept beyond every clearance while searching, metres (2 to 3 cm). */
  readonly marginM: number;
  /** Most corners of a ring. */
  readonly maxCorners: number;
}

/** Where the line may run: within a reach of the structures' bounding box, or inside a drawn outline. */
export type SearchWindow = { readonly reachM: number } | { readonly outline: Outline };

export interface SearchRequest {
  readonly ground: GroundSampler;
  /** Crest elevation, metres: level, a plane, or any smooth surface. */
  readonly crestAt: (xM: number, yM: number) => number;
  readonly section: SectionModel;
  readonly structures: readonly Outline[];
  readonly noGo: readonly Outline[];
  /** Rivers and permanent water: no line in them, and never inside a ring. */
  readonly water: readonly Outline[];
  readonly rule: SearchRule;
  readonly window: SearchWindow;
}

/** What a line takes. */
export interface LineFigures {
  /** Placed volume by the section cut by the ground, m3: what the ordinary sizing counts. */
  readonly volumeM3: number;
  /** Placed volume with the ground taken as level across, m3: what the search minimises. */
  readonly levelVolumeM3: number;
  readonly lengthM: number;
  /** Length where the crest stands above the ground, metres. */
  readonly builtLengthM: number;
  /** Greatest of crest less lowest ground under the base, metres. */
  readonly greatestHeightM: number;
  /** Length over the limit, metres. */
  readonly overLimitM: number;
}

/** A stretch that must be built, tied in at both ends. */
export interface LeveePiece {
  /** Corners from tie-in to tie-in, key-in lengths included. */
  readonly corners: readonly Point[];
  /** Where the ground reaches the crest at either end, and the elevation there, metres. */
  readonly tieIns: readonly [TieIn, TieIn];
  readonly figures: LineFigures;
}

export type TieIn = FoundTieIn<Point>;

/** One closed line round one or several structures. */
export interface FoundRing {
  /** Corners, counter-clockwise, first not repeated. */
  readonly corners: readonly Point[];
  /** Indices of the structures inside. */
  readonly encloses: readonly number[];
  readonly enclosedM2: number;
  readonly figures: LineFigures;
  /** What is minimised: level volume, a small price of length, and the price over the limit, m3. */
  readonly priceM3: number;
  /** True where some of it stands over the limit. */
  readonly overLimit: boolean;
  /** Least distance from a toe to a structure less the setback, metres; Infinity where all are far. */
  readonly spareClearanceM: number;
  /** Length on which the ground under the base is missing after all, metres; not in the figures. */
  readonly blindM: number;
  /** Empty when the whole ring must be built; else the pieces between stretches of free ground. */
  readonly pieces: readonly LeveePiece[];
  /** Stretches above the crest, drawn dashed. */
  readonly free: readonly (readonly Point[])[];
}

/** How far the found line may be from the best there is, within the window. */
export interface BestPossible {
  /** `estimate`: a search on a finer, eased lattice. `proof`: no line in the window can be cheaper. */
  readonly kind: "estimate" | "proof";
  readonly priceM3: number;
  /** (found - best possible) / best possible, at least 0. */
  readonly gapShare: number;
}

/** What a search did. */
interface SearchStatistics {
  readonly runs: number;
  /** Lattice nodes settled over all runs. */
  readonly settled: number;
  /** Nodes of the largest lattice. */
  readonly cells: number;
  /** Bytes of typed arrays held for the largest lattice and the ground under it. */
  readonly bytes: number;
  readonly milliseconds: number;
}

export interface SearchResult {
  /** One ring, or several where that takes less. */
  readonly rings: readonly FoundRing[];
  readonly priceM3: number;
  readonly volumeM3: number;
  readonly lengthM: number;
  readonly greatestHeightM: number;
  readonly overLimit: boolean;
  /** True when the search stopped at its time or run limit before it had looked at everything. */
  readonly cutShort: boolean;
  readonly notes: readonly SearchNote[];
  readonly statistics: SearchStatistics;
}

/** Limits and labels of one call. */
export interface SearchOptions {
  /** Stop refining the answer after this long and return the best so far, milliseconds. */
  readonly timeCapMs?: number;
  /** Look only within 25 m of the structure: for a first answer while something is dragged. */
  readonly nearOnly?: boolean;
  /** Clock in milliseconds; tests pass their own. */
  readonly now?: () => number;
  /** What a wider window must beat, for one ring round all structures. */
  readonly beat?: RingToBeat;
}

/** A ring found in a smaller window, which is not looked for again. */
export interface RingToBeat {
  readonly ring: FoundRing;
  /** Rings dearer than this are of no interest, m3. */
  readonly mostM3: number;
}

/** One step of a search in hand: share done 0..1, and what is being done. */
export interface SearchStep {
  readonly share: number;
  readonly doing: string;
}
