import type { LonLat } from "../../shared/plan.ts";
import type { FoundLine, FoundPiece, HowGood } from "../../shared/search-types.ts";
import { sizeLine } from "../../shared/size-line.ts";
import type { FoundRing, LeveePiece, Point } from "../search/types.ts";
import type { SearchSetup } from "./search-setup.ts";

/** Degrees are kept to nine decimals, as a plan file keeps them: a tenth of a millimetre. */
const DECIMALS = 9;

/** A found ring as the plan can hold it, sized the ordinary way; see {@link FoundLine} for ring or line. */
export function foundLine(
  setting: SearchSetup,
  ring: FoundRing,
  howGood: HowGood | null = null,
): FoundLine {
  const { plane, structures } = setting;
  const { kind, corners, only, toLonLat } = shapeOfFound(setting, ring);
  const pieces = ring.pieces.map(
    ({ corners: along, tieIns, figures }): FoundPiece => ({
      corners: toLonLat(along),
      tieIns: tieIns.map(({ at, ...rest }) => ({ at: kept(plane.toLonLat(...at)), ...rest })),
      lengthM: figures.lengthM,
      volumeM3: figures.volumeM3,
    }),
  );
  return {
    ...{ kind, corners, pieces, howGood },
    encloses: ring.encloses.map((k) => structures[k]!.id),
    enclosedM2: ring.enclosedM2,
    totals: totalsOf(setting, kind, corners),
    volumeM3: (only ?? ring).figures.volumeM3,
    free: ring.free.map(toLonLat),
    setbackM: setting.request.rule.setbackM,
  };
}

/** What a found ring is in a plan: the ring, or the one line of it that must be built. */
export function shapeOfFound(setting: SearchSetup, ring: FoundRing) {
  const { plane } = setting;
  const toLonLat = (points: readonly Point[]) => points.map((at) => kept(plane.toLonLat(...at)));
  const only = onlyPiece(setting, ring);
  const kind: FoundLine["kind"] = only ? "line" : "ring";
  const corners = toLonLat(only?.corners ?? ring.corners);
  return { kind, corners, only, toLonLat, ring: only ? toLonLat(ring.corners) : corners };
}

/** The one stretch to be built, when there is one and the free ground holds both its key-in lengths. */
function onlyPiece({ request }: SearchSetup, { pieces }: FoundRing): LeveePiece | null {
  const [only, ...others] = pieces;
  if (!only || others.length > 0) return null;
  return only.tieIns.every(({ keyInM }) => keyInM >= request.rule.keyInM) ? only : null;
}

/** Totals of a line by the ordinary sizing. */
export function totalsOf(
  { plan, plane, sampler }: SearchSetup,
  kind: FoundLine["kind"],
  corners: readonly LonLat[],
) {
  const alignment = { id: "found", name: "Found", kind, corners, reachBreaksM: [] };
  return sizeLine({ plan, alignment, plane, ground: sampler, live: true }).totals;
}

/** A place as a plan file keeps it. */
export function kept([lon, lat]: readonly [number, number]): LonLat {
  return [Number(lon.toFixed(DECIMALS)), Number(lat.toFixed(DECIMALS))];
}
