import type { Plan } from "../plan.ts";
import type { SettingKind } from "../setting.ts";
import type { SectionFigure, SectionPiece, SectionShape } from "./types.ts";

export interface FigureWords {
  readonly key: string;
  readonly label: string;
  readonly kind: SettingKind;
  /** A number, or what it is in a plan. */
  readonly default: number | ((plan: Plan) => number);
  readonly range: readonly [lowSI: number, highSI: number];
  readonly source: string;
}

/** One adjustable figure of a section, all SI. */
export function figure(words: FigureWords): SectionFigure {
  const { key, label, kind, range, source } = words;
  const fallback = words.default;
  const defaultFor = typeof fallback === "number" ? () => fallback : fallback;
  return { key, label, kind, lowSI: range[0], highSI: range[1], source, defaultFor };
}

/** Width of a wall of two bags side by side, metres. */
export function twoBagsM({ section }: Plan): number {
  return 2 * section.bag.placedWidthM;
}

/** Writes the shape of a body with upright faces, so many metres wide. */
export function uprightInto(out: SectionShape, widthM: number): void {
  out.crownM = widthM;
  out.runWater = 0;
  out.runLand = 0;
}

/** An upright or level board: its outline between two offsets and two heights over the crest, metres. */
export function board(
  material: SectionPiece["material"],
  fromM: number,
  toM: number,
  bottomM: number,
  topM: number,
): SectionPiece {
  return {
    material,
    outline: [
      [fromM, bottomM],
      [toM, bottomM],
      [toM, topM],
      [fromM, topM],
    ],
  };
}

/** A brace of some thickness between two points of [offset, height over the crest], metres. */
export function brace(
  fromM: readonly [number, number],
  toM: readonly [number, number],
  thickM: number,
): SectionPiece {
  const alongM = Math.hypot(toM[0] - fromM[0], toM[1] - fromM[1]) || 1;
  const acrossM = (-(toM[1] - fromM[1]) / alongM) * (thickM / 2);
  const upM = ((toM[0] - fromM[0]) / alongM) * (thickM / 2);
  return {
    material: "lumber",
    outline: [
      [fromM[0] + acrossM, fromM[1] + upM],
      [toM[0] + acrossM, toM[1] + upM],
      [toM[0] - acrossM, toM[1] - upM],
      [fromM[0] - acrossM, fromM[1] - upM],
    ],
  };
}
