import type { Exported } from "../exports/exported.ts";
import { fileNotes } from "./file-notes.ts";
import { mustFixOf } from "./line-state.ts";
import { beforeBuilding, mustFixWords } from "./must-fix.ts";

/** What stands around a picture of the plan, so that it cannot be read without it. */
export interface PictureWords {
  readonly title: string;
  /** What must be fixed on the line; null where nothing must. */
  readonly band: string | null;
  readonly notes: readonly string[];
}

/** @param made when the picture was made, in words @param tints what its tints mean */
export function pictureWords(exported: Exported, made: string, tints: string): PictureWords {
  const { plan, checks, system } = exported;
  const mustFix = mustFixOf(checks, system);
  const whats = mustFix.map(({ what }) => what);
  const { about, cautions } = fileNotes(exported);
  const band = `${mustFixWords(mustFix.length)}: ${whats.join(" ")} ${beforeBuilding(mustFix.length)}`;
  return {
    title: plan.title,
    band: mustFix.length > 0 ? band : null,
    notes: [`Made ${made}. North up. ${tints}`, ...about, cautions.join(" ")],
  };
}
