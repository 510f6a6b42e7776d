import { loadPart } from "../../shared/load-part.ts";
import type { TerrainFile } from "../../shared/messages.ts";
import { readText } from "./read-bytes.ts";
import type { HorizontalReference } from "./reference.ts";
import type { TextReference } from "./reference-text.ts";

/** A reference in well-known text is short; more than this is something else, bytes. */
const MOST_BYTES = 65_536;

/**
 * The reference that a .prj states.
 * @throws Refusal as of {@link textReference}
 */
export async function fileReference(file: TerrainFile): Promise<TextReference> {
  return textReference(file.name, await readText(file, MOST_BYTES));
}

/**
 * The reference in well-known text, by a part that is fetched first.
 * @throws Refusal `program/part-missing`, or as of `referenceFromText`
 */
export async function textReference(fileName: string, text: string): Promise<TextReference> {
  const part = await loadPart("the reader of .prj files", () => import("./reference-text.ts"));
  return part.referenceFromText(fileName, text);
}

/**
 * A horizontal reference as well-known text or a code of EPSG's states it.
 * @throws Refusal `program/part-missing`, or as of `referenceFromText` and `referenceFromKeys`
 */
export async function statedReference(
  stated: { readonly fileName: string } & ({ readonly text: string } | { readonly epsg: number }),
): Promise<HorizontalReference> {
  const { fileName } = stated;
  if ("text" in stated) return (await textReference(fileName, stated.text)).horizontal;
  const part = await loadPart(
    "the table of coordinate systems",
    () => import("./geotiff/reference-keys.ts"),
  );
  return part.referenceFromCode(fileName, stated.epsg);
}
