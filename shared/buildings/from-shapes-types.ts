import type { FoundShape, LeftOutShape } from "../imports/found-shapes.ts";
import type { LonLat, VerticalUnit } from "../plan.ts";
import type { Building } from "./types.ts";

/** Which columns of a file say what; null = none does. */
export interface BuildingColumns {
  /** Null = the features' own identifiers, where the file has them. */
  readonly id: string | null;
  readonly name: string | null;
  readonly floor: string | null;
  /** Of the floors; null until the person has said it: then no floor is taken. */
  readonly floorUnit: VerticalUnit | null;
  /** Holds `first`, `never`, or a number of what the building counts in the choice. */
  readonly priority: string | null;
}

/** One feature of a file where it is on Earth, and what follows from its outlines alone. */
export interface LaidOutFeature {
  readonly shape: FoundShape;
  /** Outer corners; one list for each part. */
  readonly parts: readonly (readonly LonLat[])[];
  readonly holes: number;
  readonly crossesItself: boolean;
  /** Its area where it is too small or narrow for a building, square meters; null elsewhere. */
  readonly sliverM2: number | null;
  /** The same for features of the same outlines. */
  readonly outlineKey: string;
}

/** The outlines of a file where they are on Earth, one entry for each feature that has any, in its order. */
export interface LaidOutShapes {
  readonly features: readonly LaidOutFeature[];
  readonly leftOut: readonly LeftOutShape[];
  /** Features that are no outlines: points, lines, and empty ones. */
  readonly noOutline: number;
}

/** What the elevation data covers. */
export interface CoveredGround {
  /** West, south, east, north, degrees. */
  readonly bounds: readonly [number, number, number, number];
  readonly lowestM: number;
  readonly highestM: number;
}

/** What is told of a building of a file. */
export type BuildingNote =
  | { readonly kind: "parts"; readonly id: string; readonly parts: number }
  | { readonly kind: "holes"; readonly id: string; readonly holes: number }
  | { readonly kind: "self-crossing"; readonly id: string }
  /** Some or all of its corners lie outside the elevation data. */
  | { readonly kind: "off-data"; readonly id: string; readonly isWholly: boolean }
  | { readonly kind: "repeated-id"; readonly id: string; readonly came: string }
  | { readonly kind: "no-floor"; readonly id: string }
  /** Not a figure, 0, or far from all ground; not taken. */
  | { readonly kind: "doubtful-floor"; readonly id: string; readonly came: string }
  /** Neither `first` nor `never` nor a number above 0 that is not too large; not taken. */
  | { readonly kind: "bad-priority"; readonly id: string; readonly came: string }
  /** Would be left out, and is taken because the person said so. */
  | { readonly kind: "taken-in"; readonly id: string; readonly why: LeftOutWhy }
  /** A part of a feature that is no outline; the feature from 0. */
  | ({ readonly kind: "left-out" } & LeftOutShape)
  | { readonly kind: "no-outline"; readonly count: number };

/** The outline of another, or too small or narrow for a building. */
type LeftOutWhy =
  | { readonly kind: "duplicate"; readonly of: string }
  | { readonly kind: "sliver"; readonly areaM2: number };

/** Why a building is left out, unless the person takes in all of that kind. */
export type LeftOutKind = LeftOutWhy["kind"];

/** A building that is not taken. */
export interface LeftOutBuilding {
  readonly building: Building;
  readonly why: LeftOutWhy;
}

/** The buildings of a file. */
export interface FoundBuildings {
  readonly buildings: readonly Building[];
  readonly leftOut: readonly LeftOutBuilding[];
  readonly notes: readonly BuildingNote[];
}
