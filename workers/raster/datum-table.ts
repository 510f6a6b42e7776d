import { DATUM_LINES } from "./epsg-datums.ts";

/** How coordinates on a datum become places on WGS 84. */
export interface DatumShift {
  /** Position vector: metres, arc seconds, parts per million; empty when taken as WGS 84 itself. */
  readonly shift: readonly number[];
  /** The most that this may be off, metres; 0 for WGS 84. */
  readonly errorM: number;
}

interface Table {
  readonly projected: readonly (readonly [from: number, to: number, datum: DatumShift])[];
  readonly geographic: ReadonlyMap<number, DatumShift>;
  readonly datums: ReadonlyMap<number, DatumShift>;
  readonly names: ReadonlyMap<string, DatumShift>;
}

let table: Table | null = null;

/** The datum of a projected reference by its EPSG code; null when the code is not accepted. */
export function datumOfProjected(code: number): DatumShift | null {
  return read().projected.find(([from, to]) => code >= from && code <= to)?.[2] ?? null;
}

/** The datum of a geographic reference by its EPSG code. */
export function datumOfGeographic(code: number): DatumShift | null {
  return read().geographic.get(code) ?? null;
}

/** A datum by its own EPSG code. */
export function datumByCode(code: number): DatumShift | null {
  return read().datums.get(code) ?? null;
}

/** The first datum that one of the names stands for, as EPSG or files spell it. */
export function datumByName(names: readonly string[]): DatumShift | null {
  const found = names.map((name) => read().names.get(simple(name)));
  return found.find((datum) => datum !== undefined) ?? null;
}

function simple(name: string): string {
  return name.toLowerCase().replace(/[^a-z0-9+]/g, "");
}

function read(): Table {
  table ??= parse();
  return table;
}

function parse(): Table {
  const projected: [number, number, DatumShift][] = [];
  const geographic = new Map<number, DatumShift>();
  const datums = new Map<number, DatumShift>();
  const names = new Map<string, DatumShift>();
  for (const line of DATUM_LINES.trim().split("\n")) {
    const [shift, error, codes, datumCodes, spelled, planes] = line.split("|");
    const values = shift === "0" ? [] : shift!.split(",").map(Number);
    const datum = { shift: values, errorM: Number(error) };
    for (const code of words(codes)) geographic.set(Number(code), datum);
    for (const code of words(datumCodes)) datums.set(Number(code), datum);
    for (const name of words(spelled)) names.set(name, datum);
    for (const run of words(planes)) {
      const [from, to] = run.split("-").map(Number);
      projected.push([from!, to ?? from!, datum]);
    }
  }
  return { projected, geographic, datums, names };
}

function words(text: string | undefined): string[] {
  return text ? text.split(" ") : [];
}
