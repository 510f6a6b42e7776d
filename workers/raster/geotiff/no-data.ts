import { refusal } from "../../../shared/failure.ts";
import type { ImageLayout } from "./image-layout.ts";

/**
 * The number that stands for "no data", as the cells' type holds it: the file writes it as decimal text,
 * so for 32-bit cells it is rounded to 32 bits before it is compared.
 * @param text of the GDAL_NODATA tag (42113); undefined when the file has none
 * @throws Refusal `raster/no-data-unreadable`: a hole must never pass as ground
 */
export function noDataOf(name: string, layout: ImageLayout, text: unknown): number | null {
  if (typeof text !== "string") return null;
  const written = text.replaceAll("\0", "").trim();
  if (written === "") return null;
  const value = /^[+-]?nan/i.test(written) ? Number.NaN : numberOf(written);
  if (value === null) {
    throw refusal("raster/no-data-unreadable", { name, mark: written.slice(0, 40) });
  }
  return layout.sampleFormat === 3 && layout.bits === 32 ? Math.fround(value) : value;
}

function numberOf(text: string): number | null {
  const infinite = /^([+-]?)inf(inity)?$/i.exec(text);
  if (infinite) return infinite[1] === "-" ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  const value = Number(text);
  return Number.isNaN(value) ? null : value;
}
