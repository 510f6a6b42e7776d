import { failureOf } from "../../../shared/failure.ts";
import type { READINGS_REFUSALS } from "../../../shared/words/refusals/readings.ts";
import type { SamplesOf } from "./samples.ts";

const line = 3;

export const READINGS_SAMPLES: SamplesOf<typeof READINGS_REFUSALS> = {
  "readings/empty": [{ isHeaded: true }, { isHeaded: false }],
  "readings/rows": [{ most: 500 }],
  "readings/columns": [
    { line, how: "unnamed", came: 3 },
    { line, how: "names", names: ["station", "height"] },
    { line, how: "offsets", came: 2 },
    { line, how: "levee-table", came: 4 },
  ],
  "readings/duplicate": [{ line, first: 2 }],
  "readings/station": [
    { line, why: failureOf("station/unreadable", { came: "12+100", below: 100 }) },
  ],
  "readings/outside": [{ line, lengthM: 250, came: "80+0" }],
  "readings/value": (["ground", "rod", "sided-offset", "near-offset", "number"] as const).flatMap(
    (expected) => [
      { line, expected, came: "far" },
      { line, expected, came: "" },
    ],
  ) as [{ line: number; expected: "rod"; came: string }],
  "readings/no-instrument": "no figures",
};
