import { FOOT_M } from "./constants.ts";
import type { CutWalk } from "./cut-walk.ts";
import { PUBLISHED_TABLES, type PublishedTable } from "./handbook.ts";
import type { LineSamples } from "./line-samples.ts";
import { PYRAMID } from "./sections.ts";
import type { PublishedCount } from "./sizing-types.ts";
import { shareAbove } from "./volume.ts";

/**
 * What each published table says for the heights along the line, where it is a pyramid: the tables are of no
 * other section. Sources: NDSU-11, NDSU-97, EMI-L4.
 */
export function publishedCounts(samples: LineSamples, cuts: CutWalk): PublishedCount[] {
  return PUBLISHED_TABLES.map((table) => countBy(table, samples, cuts));
}

function countBy(table: PublishedTable, samples: LineSamples, cuts: CutWalk): PublishedCount {
  const topM = (table.topFt + 1e-6) * FOOT_M;
  let bags = 0;
  let beyondM = 0;
  let coveredM = 0;
  const ofPyramid = samples.pieces.filter(({ reach }) => isPyramid(cuts, reach));
  for (const { first, last } of ofPyramid) {
    for (let i = first; i < last; i++) {
      const fromM = cuts.heightM[i]!;
      const toM = cuts.heightM[i + 1]!;
      const stepM = samples.chainageM[i + 1]! - samples.chainageM[i]!;
      if (fromM > topM || toM > topM) {
        beyondM += stepM * shareAbove(fromM, toM, topM);
      } else if (fromM > 0 || toM > 0) {
        const perFoot = table.bagsPerFoot(fromM / FOOT_M) + table.bagsPerFoot(toM / FOOT_M);
        if (Number.isNaN(perFoot)) continue;
        bags += (perFoot / 2) * (stepM / FOOT_M);
        coveredM += stepM;
      }
    }
  }
  return {
    key: table.key,
    name: table.name,
    bags: coveredM > 0 ? Math.ceil(bags - 1e-6) : null,
    ...{ coveredM, beyondM },
    why:
      ofPyramid.length === samples.pieces.length
        ? table.why
        : `${table.why} Reaches of other sections are left out.`,
  };
}

function isPyramid({ reaches }: CutWalk, reach: number): boolean {
  return reaches[reach]!.section === PYRAMID;
}
