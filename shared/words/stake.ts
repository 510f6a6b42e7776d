import { mustFixCount } from "../completeness.ts";
import type { Exported } from "../exports/exported.ts";
import { letterOfLine } from "../line-letter.ts";
import type { Station } from "../sizing-types.ts";
import {
  formatCount,
  formatElevation,
  formatLength,
  formatStation,
  lengthFrom,
  lengthUnit,
  type UnitSystem,
} from "../units.ts";
import { capital } from "./capital.ts";
import { courseWords } from "./courses.ts";
import { mustFixLead } from "./line-state.ts";
import { topWords } from "./settling.ts";

/** `A 2+50`: a stake among those of other lines. */
export function stakeName({ chainageM }: Station, { plan, line, system }: Exported): string {
  return `${letterOfLine(plan, line.id)} ${formatStation(chainageM, system)}`;
}

/** What a crew reads at a stake, a sentence each; what must be fixed on the line comes first. */
export function stakeWords(station: Station, { checks, system }: Exported): string[] {
  const mustFix = mustFixCount(checks);
  return [
    ...(mustFix > 0 ? [mustFixLead(mustFix)] : []),
    ...(station.isOverLimit ? ["Over the height limit here."] : []),
    `${capital(topWords(station, system))}.`,
    ...groundWords(station, system),
    ...builtWords(station, system),
  ];
}

/** The same as one short line beside the stake on a drawing. */
export function stakeLabel(station: Station, exported: Exported): string {
  const { system } = exported;
  const { greatestHeightM, courses, isOverLimit } = station;
  return [
    `${stakeName(station, exported)}: ${topWords(station, system)}`,
    greatestHeightM === null
      ? "no elevation data"
      : `greatest height ${formatLength(greatestHeightM, system)}`,
    ...(courses === null ? [] : [courseWords(courses)]),
    ...(isOverLimit ? ["over the height limit"] : []),
  ].join(", ");
}

function groundWords({ groundM, heightM }: Station, system: UnitSystem): string[] {
  if (groundM === null || heightM === null) return ["Ground and height: no elevation data."];
  return [`Ground ${formatElevation(groundM, system)}, height ${formatLength(heightM, system)}.`];
}

function builtWords(station: Station, system: UnitSystem): string[] {
  const { greatestHeightM, toeWatersideM, toeLandsideM, courses, bagsPerM } = station;
  if (greatestHeightM === null) return ["Base and bags: no elevation data under all of the base."];
  const bags = Math.round((bagsPerM ?? 0) * lengthFrom(1, system));
  return [
    `Greatest height above the lowest ground under the base ${formatLength(greatestHeightM, system)}.`,
    ...(courses === null
      ? []
      : [
          `${courseWords(courses)} at center, ${formatCount(bags)} bags per ${lengthUnit(system)}.`,
        ]),
    `Half widths ${formatLength(toeWatersideM!, system)} waterside, ${formatLength(toeLandsideM!, system)} landside.`,
  ];
}

/** What the elevation of a waypoint is: the format has meters and no word for a datum. */
export function gpxElevationNote({ verticalDatum }: Exported): string {
  return `The elevation of each waypoint is the top of levee, in meters as GPX requires; vertical datum: ${verticalDatum}. A handheld receiver's own elevation is not good enough to set a stake: survey it from a benchmark.`;
}

/** How the altitudes of a KML file are to be read. */
export function kmlAltitudeNote({ verticalDatum }: Exported): string {
  return `Altitudes in this file are the top of levee in meters, vertical datum: ${verticalDatum}, not shifted to EGM96, which KML counts altitudes from. Stakes, base and buildings are clamped to the ground that the viewer has; the top of levee is drawn at absolute altitude, so it may float over that ground or lie under it.`;
}
