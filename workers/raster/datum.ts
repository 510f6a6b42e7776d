import { refusal } from "../../shared/failure.ts";
import type { DatumDoubt } from "../../shared/messages.ts";
import { type DatumShift, datumByCode, datumByName, datumOfGeographic } from "./datum-table.ts";

/** How a raster's datum lies on WGS 84, and what is left uncertain. */
export interface Datum {
  /** As in {@link DatumShift}. */
  readonly shift: readonly number[];
  /** Null when the datum is WGS 84. */
  readonly note: DatumDoubt | null;
}

/** What a file states about its datum beside a code of a projected reference. */
export interface DatumStatement {
  /** EPSG codes of the geographic reference, and of its datum. */
  readonly geographic: readonly number[];
  readonly datums: readonly number[];
  /** Names of the reference and its datum, the surest first. */
  readonly names: readonly string[];
  /** The file's own shift in the position-vector sense; null when it has none. */
  readonly shift: readonly number[] | null;
}

/**
 * The datum that a file states by code, else by name, else by a shift of its own. An ellipsoid alone says
 * nothing: national datums on GRS 80 lie hundreds of metres off WGS 84.
 * @throws Refusal `raster/datum-unknown`
 */
export function datumOf(fileName: string, label: string, stated: DatumStatement): Datum {
  const { geographic, datums, names, shift } = stated;
  const byCode = [...geographic.map(datumOfGeographic), ...datums.map(datumByCode)];
  const known = byCode.find((datum) => datum !== null) ?? datumByName(names);
  if (known) return withNote(known);
  if (!shift || ![3, 7].includes(shift.length) || shift.some((value) => !Number.isFinite(value))) {
    throw refusal("raster/datum-unknown", { name: fileName, reference: label });
  }
  return { shift, note: { kind: "by-own-shift" } };
}

/** The same of a datum in the table. */
export function withNote({ shift, errorM }: DatumShift): Datum {
  const kind = shift.length === 0 ? "taken-as-equal" : "by-average";
  return { shift, note: errorM === 0 ? null : { kind, errorM } };
}
