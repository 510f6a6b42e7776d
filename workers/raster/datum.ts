import proj4 from "proj4";

interface Datum {
  /** PROJ definition with the shift to WGS 84 in it, when one is known. */
  readonly definition: string;
  /** What that leaves uncertain; null when the datum is WGS 84. */
  readonly note: string | null;
}

/**
 * Geographic reference (EPSG code) of datums that lie tens to hundreds of metres off WGS 84, by the
 * names files use for them and by the projected codes that imply them. Source: EPSG Geodetic
 * Parameter Dataset; the shifts themselves are the ones proj4 carries under these codes.
 */
const FAR_DATUMS: readonly {
  readonly geographic: number;
  readonly name: RegExp;
  readonly projected: readonly (readonly [number, number])[];
  /** Given here where proj4 carries one that holds for a part of the datum's area only. */
  readonly shift?: readonly string[];
}[] = [
  { geographic: 4277, name: /OSGB|Ordnance Survey of Great Britain/i, projected: [[27700, 27700]] },
  {
    geographic: 4267,
    name: /NAD.?27|North.American.(Datum.)?(of.)?1927/i,
    projected: [
      [26701, 26722],
      [26729, 26803],
      [32001, 32060],
    ],
  },
  {
    geographic: 4230,
    name: /ED.?50|European.(Datum.)?1950/i,
    projected: [[23028, 23038]],
    shift: ["-87", "-98", "-121"],
  },
  { geographic: 4289, name: /Amersfoort/i, projected: [[28991, 28992]] },
  { geographic: 4314, name: /DHDN|Deutsches.Hauptdreiecksnetz/i, projected: [[31466, 31469]] },
  {
    geographic: 4312,
    name: /\bMGI\b|Militar.Geographische/i,
    projected: [
      [31254, 31259],
      [31284, 31287],
    ],
  },
  { geographic: 4150, name: /CH1903\+/i, projected: [[2056, 2056]] },
  { geographic: 4149, name: /CH1903(?!\+)/i, projected: [[21781, 21781]] },
  { geographic: 4313, name: /BD.?72|Belge.1972/i, projected: [[31370, 31370]] },
  { geographic: 4299, name: /TM65/i, projected: [[29902, 29902]] },
  { geographic: 4300, name: /TM75/i, projected: [[29903, 29903]] },
  {
    geographic: 4272,
    name: /NZGD.?49|New.Zealand.(Geodetic.Datum.)?1949/i,
    projected: [[27200, 27200]],
  },
  { geographic: 4284, name: /Pulkovo.1942/i, projected: [[28404, 28432]] },
  { geographic: 4156, name: /S-JTSK/i, projected: [[5514, 5514]] },
  { geographic: 4611, name: /Hong.Kong.1980/i, projected: [[2326, 2326]] },
];

/** What a file states about its datum. */
export interface DatumStatement {
  /** PROJ string of the file's reference. */
  readonly definition: string;
  /** EPSG code of the projected reference; null when user-defined or geographic. */
  readonly projected: number | null;
  /** EPSG codes of the geographic reference or its datum. */
  readonly geographic: readonly number[];
  /** Names the file states. */
  readonly citations: string;
}

/** Adds the shift to WGS 84 that the file leaves out, as far as it is known without a grid. */
export function datumOf(statement: DatumStatement): Datum {
  const definition = withoutAxisSwap(statement.definition);
  const own = /\s*\+towgs84=(\S+)/.exec(definition);
  const plain = own ? definition.replace(own[0], "") : definition;
  const shift = isModern(plain) ? null : (knownShift(statement) ?? ownShift(own?.[1], statement));
  const shifted = shift ? `${plain} +towgs84=${shift.join(",")}` : plain;
  return { definition: shifted, note: noteOf(shifted) };
}

function knownShift({
  projected,
  geographic,
  citations,
}: DatumStatement): readonly string[] | null {
  const implied = FAR_DATUMS.find((datum) =>
    datum.projected.some(
      ([from, to]) => projected !== null && projected >= from && projected <= to,
    ),
  );
  if (implied) return implied.shift ?? shiftOf(implied.geographic);
  const stated = geographic.map((code) => shiftOf(code) ?? shiftOf(code - 2000));
  return stated.find((shift) => shift !== null) ?? shiftByName(citations);
}

/**
 * The shift in a definition: the file's own is in the position-vector sense that proj4 expects; those of
 * geotiff-geokeys-to-proj4, which come with a code, turn the other way (checked against PROJ).
 */
function ownShift(text: string | undefined, statement: DatumStatement): readonly string[] | null {
  if (text === undefined) return null;
  const values = text.split(",").slice(0, 7);
  if (statement.projected === null && statement.geographic.length === 0) return values;
  return values.map((value, i) => (i >= 3 && i <= 5 ? String(-Number(value)) : value));
}

/**
 * Rasters store easting before northing whatever the axis order of their reference
 * (OGC 19-008r4), so "north, east" must not swap them.
 */
function withoutAxisSwap(definition: string): string {
  return definition
    .replace(/\+axis=(ne|neu|en|enu)\b/, "")
    .replace(/\s+/g, " ")
    .trim();
}

/** The shift of a far datum that a text names; null when it names none. */
export function shiftByName(text: string): readonly string[] | null {
  const named = FAR_DATUMS.find((datum) => datum.name.test(text));
  return named ? (named.shift ?? shiftOf(named.geographic)) : null;
}

/**
 * Shift parameters (metres, arc seconds, parts per million) that proj4 carries for a geographic code;
 * null when it carries none.
 */
function shiftOf(geographic: number): readonly string[] | null {
  const known = new proj4.Proj(`+proj=longlat +datum=EPSG_${geographic} +no_defs`);
  return (known as unknown as { datum_params?: string[] | null }).datum_params ?? null;
}

function noteOf(definition: string): string | null {
  const shift = /\+towgs84=(\S+)/.exec(definition)?.[1]?.split(",").map(Number) ?? null;
  const isWgs84 = /\+(ellps|datum)=WGS84\b/.test(definition);
  return noteOnDatum(shift, isModern(definition) ? EQUATOR_M : 0, isWgs84);
}

/**
 * What a datum leaves uncertain about places on WGS 84.
 * @param shift parameters of the shift to WGS 84; null when there is none
 * @param equatorM equatorial radius of the ellipsoid
 */
export function noteOnDatum(
  shift: readonly number[] | null,
  equatorM: number,
  isWgs84: boolean,
): string | null {
  if (shift?.some((value) => value !== 0 && value !== 1)) {
    return "Its datum is brought to WGS 84 by average parameters, without a grid: positions against other maps are good to some 10 m. Heights read from this raster are not affected.";
  }
  if (isWgs84) return null;
  if (equatorM === EQUATOR_M) {
    return "Its datum is taken as equal to WGS 84, from which it differs by up to about 2 m.";
  }
  return "Its datum is not WGS 84 and no shift for it is known here: positions against other maps may be off by several hundred metres. Heights read from this raster are not affected.";
}

/** Equatorial radius of the frames that follow the Earth's centre (GRS 80, WGS 84): all within 2 m. */
const EQUATOR_M = 6_378_137;

function isModern(definition: string): boolean {
  if (/\+(ellps|datum)=(GRS80|WGS84|NAD83)\b/.test(definition)) return true;
  return Number(/\+a=(\S+)/.exec(definition)?.[1]) === EQUATOR_M;
}
