import type { RefusalTexts } from "./text.ts";

/** Why a file or a table cannot be made, or that it was: the pages bring these texts. */
export const EXPORT_REFUSALS = {
  "export/grid-unit": ({ crs, unitM }: { crs: string; unitM: number }, units) => [
    `Expected elevation data on a grid in meters or feet for a drawing; ${crs} counts in units of ${units.figure(unitM)}.`,
    "Export KML, GPX or GeoJSON, or bring the elevation data onto a grid in meters or feet in a GIS first.",
  ],
  "export/no-picture": () => [
    "Expected the map to take a picture of; the browser has lost its graphics.",
    "Reload the page, then save the picture again. Your plan is saved.",
  ],
  "export/copied": ({ table }: { table: "Stakes" | "Build sequence" }) => [
    `${table} copied.`,
    "Paste it into a spreadsheet: every column names its unit.",
  ],
  "export/no-clipboard": () => [
    "The browser does not let this page copy.",
    "Save the table as a CSV file instead, and open that in the spreadsheet.",
  ],
} satisfies RefusalTexts;
