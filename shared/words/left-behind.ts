import type { Failure } from "../failure.ts";
import type { LeftBehind } from "../ground-settings.ts";

/**
 * That what was said of other elevation data does not stand on this one; null when nothing of weight was said.
 * @param typicalM accuracy that is taken now, metres; null where that is not known yet
 * @param length writes a length
 */
export function leftBehind(
  left: LeftBehind,
  typicalM: number | null,
  length: (m: number) => string,
): Failure | null {
  const { rmseM, correctionM, datumNote, sameDatumNote, offsetM } = left;
  const said = [
    rmseM !== null && rmseM !== typicalM && `accuracy ${length(rmseM)}`,
    correctionM !== 0 && `correction of ${length(correctionM)}`,
    datumNote && `vertical datum "${datumNote}"`,
    sameDatumNote && `datum note of the water "${sameDatumNote}"`,
  ].filter((words) => typeof words === "string" && words !== "");
  if (said.length === 0 && offsetM === null) return null;
  const gone = said.length > 0 ? `No longer used: ${said.join(", ")}.` : "";
  const offset =
    offsetM === null ? "" : ` The datum offset of ${length(offsetM)} in Water is kept: check it.`;
  return {
    code: "ground/other-data",
    message: `This is other elevation data than the plan was made on. ${gone}${offset}`.trim(),
    remedy: "Enter what the report of this data says, in Elevation data and Water.",
  };
}
