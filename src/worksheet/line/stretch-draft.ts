import { signal } from "@preact/signals";
import { isStandard } from "../../../shared/reaches.ts";
import type { Check } from "../../../shared/sizing-types.ts";
import { lengthFrom, type UnitSystem } from "../../../shared/units.ts";
import type { Stretch } from "../../document/edits/reaches.ts";
import { openDisclosure } from "../../ui/disclosure.tsx";

/** How far at least a stretch is led out past where it was found, metres. */
const BEYOND_M = 0.5;

/** A stretch that is to be built otherwise, and as what when that is known. */
export interface StretchDraft extends Stretch {
  readonly section: string | null;
}

/** The stretch last asked to be built otherwise; the form for it starts from there. */
export const stretchDraft = signal<StretchDraft | null>(null);

/** The first levee type that a finding proposes for its stretch; null when it proposes none. */
export function proposedSection({ fromM, toM, finding }: Check): string | null {
  if (fromM === toM || !("fits" in finding)) return null;
  return finding.fits.find(({ typeId }) => !isStandard({ section: typeId }))?.typeId ?? null;
}

/** Leads to where a stretch is built otherwise, with that stretch filled in, a little longer than it was found. */
export function buildOtherwise(draft: StretchDraft, lengthM: number, system: UnitSystem): void {
  openDisclosure("line", "reaches");
  stretchDraft.value = { ...draft, ...roundedOut(draft, lengthM, system) };
}

/**
 * A stretch led out past both ends to round stations, and not past the line's own: what is found ends between
 * two of its samples, and a sliver left at an end would be found again.
 */
export function roundedOut({ fromM, toM }: Stretch, lengthM: number, system: UnitSystem): Stretch {
  const stepM = lengthFrom(system === "us" ? 5 : 2, system);
  return {
    fromM: Math.max(0, Math.floor((fromM - BEYOND_M) / stepM) * stepM),
    toM: Math.min(lengthM, Math.ceil((toM + BEYOND_M) / stepM) * stepM),
  };
}
