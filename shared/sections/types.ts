import type { HoldingSettings, Plan } from "../plan.ts";
import type { Setting } from "../setting.ts";
import type { LeveeTypeId } from "../words/levee-types.ts";

/** What fills the body of a levee. */
export type Fill = "bags" | "sand" | "earth";

/** What a section is made of, as it is drawn; `earlier` is what stood there before and is not counted. */
export type PartMaterial = Fill | "plywood" | "lumber" | "earlier";

/** Figures of a section by key, SI; complete: every figure the section declares is there. */
export type SectionFigures = Readonly<Record<string, number>>;

/** One adjustable figure of a section. Its default may come from the plan's own section. */
export interface SectionFigure extends Omit<Setting, "name" | "defaultSI"> {
  readonly key: string;
  readonly label: string;
  readonly defaultFor: (plan: Plan) => number;
}

/**
 * The body above the ground at one height: a crown centred on the line and straight sides down from it.
 * Runs are metres across for each metre down; 0 is an upright face.
 */
export interface SectionShape {
  crownM: number;
  runWater: number;
  runLand: number;
}

/** What a metre of line takes beside its fill, at one height. */
export interface PerMetre {
  /** Faces of plywood, m2 per metre. */
  plywoodM2: number;
  /** Lumber of 2 x 4 in, metres per metre. */
  lumberM: number;
  /** Boards of 1 x 12 in, metres per metre. */
  boardsM: number;
  /** Stakes and posts, number per metre. */
  stakes: number;
}

/**
 * A levee type: what it is built of, how it lies on the ground, what it takes, how high it may go
 * and how it is drawn. A new one is a file that declares one of these, a name in `shared/sections.ts`, and its words in `words/levee-types.ts`.
 */
export interface EmergencySection {
  readonly id: LeveeTypeId;
  /** `Sandbag pyramid`. */
  readonly name: string;
  readonly figures: readonly SectionFigure[];
  readonly fill: Fill;
  /** Over this it must not be built, metres; null = the plan's own height limit. Its source: `words/levee-types`. */
  readonly limitM: number | null;
  /** Whether its own weight carries the water, or bracing, which is not calculated here. */
  readonly carriedBy: "weight" | "bracing";
  /** Sheet laid on its waterside face. */
  readonly sheet: boolean;
  /** Mass of the body as built, kg/m3. */
  readonly kgPerM3: (holding: HoldingSettings) => number;
  /** Writes the shape of the whole body at a height; allocates nothing. */
  readonly shapeInto: (out: SectionShape, heightM: number, figures: SectionFigures) => void;
  /**
   * Writes the shape of what already stands and is not counted, and gives how far its crown lies below the
   * crest, metres; left out where nothing stands yet.
   */
  readonly earlierInto?: (out: SectionShape, heightM: number, figures: SectionFigures) => number;
  /** Writes what a metre of line takes beside its fill. */
  readonly perMetreInto: (out: PerMetre, heightM: number, figures: SectionFigures) => void;
  /** Boards, posts and braces to draw at a height, in metres from centre line (+ = waterside) and crest (+ = up). */
  readonly pieces: (heightM: number, figures: SectionFigures) => readonly SectionPiece[];
}

/** A board, a post or a brace: a closed outline of [offset, height over the crest] pairs, metres. */
export interface SectionPiece {
  readonly material: "plywood" | "lumber";
  readonly outline: readonly (readonly [number, number])[];
}

/** A part of a levee cut across, ready to draw: a closed outline, offsets as in the cut, elevations in metres. */
export interface SectionPart {
  readonly material: PartMaterial;
  /** Offset (positive to the left of chainage) and elevation, interleaved. */
  readonly outlineM: Float64Array;
}
