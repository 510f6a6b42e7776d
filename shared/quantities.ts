import type { Practice, Section, Sheet } from "./plan.ts";

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
 * Width of sheet where the waterside toe is `toeM` from the centre line and `dropM` below the crest:
 * toe extension + sloping face + crown + tail, metres. Source: NDSU-11 (1 ft beyond the toe), MVS (2 ft).
 */
export function sheetWidthM(section: Section, toeM: number, dropM: number): number {
  const halfCrownM = section.crownM / 2;
  const faceM = toeM < halfCrownM ? 0 : Math.hypot(toeM - halfCrownM, dropM);
  const crownM = halfCrownM + Math.min(halfCrownM, toeM);
  return section.sheet.toeExtensionM + faceM + crownM + section.sheet.tailM;
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
  section: Section,
  practice: Practice,
): number {
  const byBaseM = (section.baseRatio * heightM) / section.leastBaseRatio;
  return Math.min(byBaseM, practice.limitM - (greatestHeightM - heightM));
}

/** A whole order for a computed amount: rounded up, without a further one for rounding errors. */
export function wholeOrder(amount: number): number {
  return Math.max(0, Math.ceil(amount - 1e-6));
}
