import { FOOT_M } from "./constants.ts";
import type { Plan, Practice, Section, Sheet } from "./plan.ts";
import type { Fill } from "./sections/types.ts";

/** One sheet of plywood, 4 x 8 ft. Source: common practice, no source. */
export const PLYWOOD_SHEET_M2 = 4 * 8 * FOOT_M ** 2;

/** Length of one piece of 2 x 4 in lumber, as of a kicker, metres. Source: DWR-03 p49. */
export const LUMBER_PIECE_M = 10 * FOOT_M;

/** Length of one board of 1 x 12 in, metres. Source: DWR-03 p47. */
export const BOARD_PIECE_M = 12 * FOOT_M;

/** Bags placed for a volume, not rounded: volume over the volume of one placed bag. Source: NDSU-11 (derived). */
export function bagsPlacedFor(volumeM3: number, section: Section): number {
  return volumeM3 / section.bag.placedVolumeM3;
}

/** Bags ordered, not rounded: placed and spares. Source: the share of spares is from memory, 5 to 10 %. */
export function bagsOrderedFor(volumeM3: number, section: Section, practice: Practice): number {
  return bagsPlacedFor(volumeM3, section) * (1 + practice.spareShare);
}

/**
 * Sand ordered, m3: bags ordered x volume of one bag x (1 + waste), and the sand in the bags that hold
 * the sheet along the built length. Source: NDSU-11 (2 cu yd per 100 ft for the sheet; sand equals the
 * volume in place); waste is common practice, no source.
 */
export function sandFor(
  volumeM3: number,
  builtLengthM: number,
  section: Section,
  practice: Practice,
): number {
  const inBagsM3 = bagsOrderedFor(volumeM3, section, practice) * section.bag.placedVolumeM3;
  return inBagsM3 * (1 + practice.wasteShare) + practice.sheetAnchorM3PerM * builtLengthM;
}

/** Bags that hold the sheet, not rounded; they are beside the bags of the levee. Source: NDSU-11 (derived). */
export function sheetBagsFor(builtLengthM: number, section: Section, practice: Practice): number {
  return (practice.sheetAnchorM3PerM * builtLengthM) / section.bag.placedVolumeM3;
}

/**
 * Sand or earth ordered loose, m3: as measured in place, and waste. Source: common practice, no source. Earth
 * dug for it swells and takes more room before it is tamped.
 */
export function looseOrderedFor(volumeM3: number, practice: Practice): number {
  return volumeM3 * (1 + practice.wasteShare);
}

/**
 * Bags that people's time is calculated from, not rounded: bags ordered; sand and earth without bags as the bags of
 * the same volume, for shovelled fill is no faster than filling. Source: judgement.
 */
export function labourBagsFor(fill: Fill, volumeM3: number, { section, practice }: Plan): number {
  if (fill === "bags") return bagsOrderedFor(volumeM3, section, practice);
  return bagsPlacedFor(volumeM3, section);
}

/**
 * Width of sheet over a crown where the waterside toe is `toeM` from the centre line and `dropM` below the crest:
 * toe extension + sloping face + crown + tail, metres. Source: NDSU-11 (1 ft beyond the toe), MVS (2 ft).
 */
export function sheetWidthM(
  section: Section,
  toeM: number,
  dropM: number,
  crownM = section.crownM,
): number {
  const halfCrownM = crownM / 2;
  const faceM = toeM < halfCrownM ? 0 : Math.hypot(toeM - halfCrownM, dropM);
  const overM = halfCrownM + Math.min(halfCrownM, toeM);
  return section.sheet.toeExtensionM + faceM + overM + section.sheet.tailM;
}

/**
 * Rolls for a length, laid end to end with laps: ceil((L - lap) / (roll - lap)), times the strips side by
 * side where one roll is narrower than the sheet. Source: derived; rolls of 20 x 100 ft from MVS, lap of
 * 3 ft from NDSU-11.
 */
export function sheetRollsFor(lengthM: number, widthM: number, sheet: Sheet): number {
  if (!(lengthM > 0)) return 0;
  const ends = coverCount(lengthM, sheet.rollLengthM, sheet.lapM);
  return ends * coverCount(widthM, sheet.rollWidthM, sheet.lapM);
}

function coverCount(lengthM: number, pieceM: number, lapM: number): number {
  if (!(lengthM > pieceM)) return 1;
  const gainM = pieceM - Math.min(lapM, pieceM / 2);
  return Math.ceil((lengthM - (pieceM - gainM)) / gainM - 1e-9);
}

/** Courses of bags for a height. Source: DWR-03 (one bag gives 3 to 4 in). */
export function coursesFor(heightM: number, section: Section): number {
  return Math.max(0, Math.ceil(heightM / section.bag.courseM - 1e-9));
}

/** Bags side by side across a base. Source: NDSU-11 (bags 14 in wide). */
export function bagsAcrossFor(baseM: number, section: Section): number {
  return Math.max(0, Math.ceil(baseM / section.bag.placedWidthM - 1e-9));
}

/**
 * Height at the centre line that this base could later carry, metres: r h / r_min, and never so high that
 * the greatest height passes the limit. Source: NDSU-NR (base at least twice the height).
 */
export function raiseToM(
  heightM: number,
  greatestHeightM: number,
  section: Pick<Section, "baseRatio" | "leastBaseRatio">,
  practice: Practice,
): number {
  const byBaseM = (section.baseRatio * heightM) / section.leastBaseRatio;
  return Math.min(byBaseM, practice.limitM - (greatestHeightM - heightM));
}

/** A whole order for a computed amount: rounded up, without a further one for rounding errors. */
export function wholeOrder(amount: number): number {
  return Math.max(0, Math.ceil(amount - 1e-6));
}
