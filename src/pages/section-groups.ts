import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import { classOnReach, isStandard, reachAt } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";

/** A part of the line that one cross-section is drawn for. */
export interface SectionGroup {
  /** `typical` of a height class, the `highest` place of the line, or of a levee `type` that is not of the plan's own. */
  readonly kind: "typical" | "highest" | "type";
  /** Where it is cut. */
  readonly chainageM: number;
  readonly stretches: readonly Stretch[];
  readonly lengthM: number;
  /** Lowest and highest of it, low toe to top, metres. */
  readonly lowM: number;
  readonly highM: number;
  readonly isOver: boolean;
}

interface Stretch {
  readonly fromM: number;
  readonly toM: number;
}

const OVER = HEIGHT_CLASSES - 1;
/** How far before its end a reach is cut across there, metres. */
const END_M = 0.05;
/** A stretch shorter than this is not told, metres: it is one sample between two of another height. */
const SHORT_M = 0.3;
/** The typical place of a class is looked for among this share of it about its middle height. */
const MIDDLE_SHARE = 0.3;

/**
 * What cross-sections a line is built by: one of the middle height of each height class that there is, cut where the
 * ground is most level; one of each other levee type where it is highest; and last the highest place of the line.
 * @param stepsToM height that the classes divide, metres
 */
export function sectionGroups(line: SizedLine, stepsToM: number): SectionGroup[] {
  const kinds = kindsOf(line, stepsToM);
  const classes = Array.from({ length: OVER }, (_, each) => each).flatMap((each) =>
    groupOf(line, kinds, each, "typical"),
  );
  const types = [...new Set(kinds.filter((kind) => typeof kind === "string"))].flatMap((type) =>
    groupOf(line, kinds, type, "type"),
  );
  return [...classes, ...types, ...highestOf(line, kinds)];
}

/** Height class of each sample, the id of its levee type where that is another, null where nothing is built or known. */
function kindsOf(line: SizedLine, stepsToM: number): (number | string | null)[] {
  return Array.from(line.walk.greatestHeightM, (heightM, i) => {
    const reach = reachAt(line, line.walk.chainageM[i]!);
    const height = classOnReach(heightM, stepsToM, reach.limitM);
    if (height < 0) return null;
    return isStandard(reach) ? height : reach.section;
  });
}

type Kinds = readonly (number | string | null)[];

function groupOf(
  line: SizedLine,
  kinds: Kinds,
  wanted: number | string,
  kind: "typical" | "type",
): SectionGroup[] {
  const stretches = stretchesOf(line, (i) => kinds[i] === wanted);
  if (stretches.length === 0) return [];
  const { greatestHeightM, chainageM } = line.walk;
  const own = kinds.flatMap((each, i) => (each === wanted ? [i] : []));
  const at = kind === "type" ? highestIn(line, own) : typicalIn(line, own);
  const heights = own.map((i) => greatestHeightM[i]!);
  const reach = reachAt(line, chainageM[at]!);
  return [
    {
      ...{ kind, stretches },
      chainageM: Math.min(Math.max(chainageM[at]!, reach.fromM), reach.toM - END_M),
      lengthM: stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0),
      lowM: Math.min(...heights),
      highM: Math.max(...heights),
      isOver: Math.max(...heights) > reach.limitM + 1e-9,
    },
  ];
}

function highestOf(line: SizedLine, kinds: Kinds): SectionGroup[] {
  const { greatestHeightM, greatestHeightAtM } = line.totals;
  const reach = reachAt(line, greatestHeightAtM);
  if (!(greatestHeightM > 0) || !isStandard(reach)) return [];
  const isOver = greatestHeightM > reach.limitM + 1e-9;
  const stretches = isOver ? stretchesOf(line, (i) => kinds[i] === OVER) : [];
  return [
    {
      ...{ kind: "highest", stretches, isOver, highM: greatestHeightM },
      chainageM: Math.min(greatestHeightAtM, reach.toM - END_M),
      lengthM: stretches.reduce((sum, { fromM, toM }) => sum + toM - fromM, 0),
      lowM: isOver ? reach.limitM : greatestHeightM,
    },
  ];
}

/** Stretches of a line whose samples are wanted, from the middle between the samples at either end. */
export function stretchesOf(
  { walk }: Pick<SizedLine, "walk">,
  isWanted: (index: number) => boolean,
): Stretch[] {
  const { chainageM } = walk;
  const last = chainageM.length - 1;
  const edge = (a: number, b: number) => (chainageM[a]! + chainageM[b]!) / 2;
  const found: Stretch[] = [];
  let start = -1;
  for (let i = 0; i <= last + 1; i++) {
    const isIn = i <= last && isWanted(i);
    if (isIn && start < 0) start = i;
    if (isIn || start < 0) continue;
    const fromM = edge(Math.max(0, start - 1), start);
    const toM = i > last ? chainageM[last]! : edge(i - 1, i);
    if (toM - fromM >= SHORT_M) found.push({ fromM: start === 0 ? chainageM[0]! : fromM, toM });
    start = -1;
  }
  return found;
}

function highestIn({ walk }: SizedLine, own: readonly number[]): number {
  return own.reduce((best, i) =>
    walk.greatestHeightM[i]! > walk.greatestHeightM[best]! ? i : best,
  );
}

function typicalIn({ walk }: SizedLine, own: readonly number[]): number {
  const { greatestHeightM, heightM } = walk;
  const ordered = [...own].sort((a, b) => greatestHeightM[a]! - greatestHeightM[b]!);
  const half = (MIDDLE_SHARE / 2) * ordered.length;
  const middle = (ordered.length - 1) / 2;
  const about = ordered.slice(Math.floor(middle - half), Math.ceil(middle + half) + 1);
  const slope = (i: number) => Math.abs(greatestHeightM[i]! - heightM[i]!);
  return about.reduce((best, i) => (slope(i) < slope(best) ? i : best));
}
