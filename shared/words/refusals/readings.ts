import type { Failure } from "../../failure.ts";
import { lengthUnit } from "../../units.ts";
import { plural } from "../plural.ts";
import { quoted } from "../quoted.ts";
import { readingExample } from "../survey.ts";
import type { Units } from "../units.ts";
import type { RefusalText, RefusalTexts } from "./text.ts";

type WrongColumns = { readonly line: number } & (
  | { readonly how: "unnamed" | "offsets" | "levee-table"; readonly came: number }
  | { readonly how: "names"; readonly names: readonly string[] }
);

function columnsText(given: WrongColumns, { system }: Units): RefusalText {
  const unit = lengthUnit(system);
  const at = `Line ${given.line}: expected`;
  switch (given.how) {
    case "unnamed":
      return [
        `${at} two columns, station and reading; came ${given.came}.`,
        `Put a first line that names the columns: station, rod_${unit} or station, ground_${unit}.`,
      ];
    case "names":
      return [
        `${at} column names with station and rod, or station and ground, each once; came ${given.names.map((name) => quoted(name, 20)).join(", ")}.`,
        `Name them so: station, rod_${unit} or station, ground_${unit}.`,
      ];
    case "offsets":
      return [
        `${at} one column of offsets; came ${given.came}.`,
        `Name them so: station, offset_${unit}, ground_${unit}.`,
      ];
    case "levee-table":
      return [
        `${at} a table of readings alone; this one has ${plural(given.came, "column")}, and its ground may be that of the elevation data.`,
        `Give the columns station and ground only, or name the readings: rod_${unit}.`,
      ];
  }
}

const EXPECTED = {
  ground: "a ground elevation",
  rod: "a rod reading",
  "sided-offset": "an offset with a side and without a sign",
  "near-offset": "an offset near the line",
};

interface WrongValue {
  readonly line: number;
  readonly expected: keyof typeof EXPECTED | "number";
  readonly came: string;
}

/** Of what is read at stakes; comes with its reader. */
export const READINGS_REFUSALS = {
  "readings/empty": ({ isHeaded }: { isHeaded: boolean }, { system }) =>
    isHeaded
      ? [
          "Expected rows of station and reading below the first line; none has a reading.",
          `Type one row for each stake that was read: ${readingExample("rod", system)}.`,
        ]
      : [
          "Expected rows of station and reading; nothing came.",
          `Type one row for each stake: ${readingExample("rod", system)}.`,
        ],
  "readings/rows": ({ most }: { most: number }) => [
    `Expected at most ${most} rows of readings; this text has more.`,
    "Give the readings of one line alone.",
  ],
  "readings/columns": columnsText,
  "readings/duplicate": ({ line, first }: { line: number; first: number }) => [
    `Line ${line}: expected each station once; line ${first} has the same.`,
    "Leave the better reading of the two.",
  ],
  "readings/station": ({ line, why }: { line: number; why: Failure }, _units, say) => {
    const [message, remedy] = say(why);
    return [`Line ${line}: ${message}`, remedy];
  },
  "readings/outside": (
    { line, lengthM, came }: { line: number; lengthM: number; came: string },
    units,
  ) => [
    `Line ${line}: expected a station of the line, which is ${units.distance(lengthM)} long; came ${came.slice(0, 40)}.`,
    "Check the station, or choose the line that was read.",
  ],
  "readings/value": ({ line, expected, came }: WrongValue) =>
    expected === "number"
      ? [
          `Line ${line}: expected a reading such as 6.14; ${came === "" ? "the place is empty" : `${quoted(came)} came`}.`,
          "Write decimals with a point, or take the row out if the stake was not read.",
        ]
      : [
          `Line ${line}: expected ${EXPECTED[expected]}; ${quoted(came)} is none.`,
          "Check the figure and its unit, and whether the table has rod readings or ground elevations.",
        ],
  "readings/no-instrument": () => [
    "Expected the benchmark and the backsight, because rod readings count down from the height of instrument; one or both are not typed.",
    "Type them in Survey, or give ground elevations.",
  ],
} satisfies RefusalTexts;
