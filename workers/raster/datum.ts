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
  { geographic: 4230, name: /ED.?50|European.(Datum.)?1950/i, projected: [[23028, 23038]] },
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
];

/**
 * Adds the shift to WGS 84 that the file leaves out, as far as it is known without a grid.
 * @param definition PROJ string of the file's reference
 * @param codes EPSG codes the file states: projected, geographic or datum
 * @param citations names the file states
 */
export function datumOf(definition: string, codes: readonly number[], citations: string): Datum {
  const plain = withoutAxisSwap(definition);
  if (/\+towgs84=/.test(plain)) return { definition: plain, note: noteOf(plain) };
  const far = FAR_DATUMS.find(
    (datum) =>
      codes.some((code) => code === datum.geographic || code === datum.geographic + 2000) ||
      codes.some((code) => datum.projected.some(([from, to]) => code >= from && code <= to)),
  );
  const named = far ?? FAR_DATUMS.find((datum) => datum.name.test(citations));
  if (!named || isModern(plain)) return { definition: plain, note: noteOf(plain) };
  const shifted = `${plain.trim()} +towgs84=${shiftOf(named.geographic).join(",")}`;
  return { definition: shifted, note: noteOf(shifted) };
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
  return named ? shiftOf(named.geographic) : null;
}

/** Shift parameters (metres, arc seconds, parts per million) that proj4 carries for a geographic code. */
function shiftOf(geographic: number): readonly string[] {
  const known = new proj4.Proj(`+proj=longlat +datum=EPSG_${geographic} +no_defs`);
  return (known as unknown as { datum_params: string[] }).datum_params;
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
    return "Its datum is brought to WGS 84 by average parameters, without a grid: positions against other maps are good to some 5 to 10 m. Heights read from this raster are not affected.";
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
