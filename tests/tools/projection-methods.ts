import type { Plugin } from "vite";

/** What proj4's own imports become in the build, by the address in its sources. */
const FIRST: Readonly<Record<string, string>> = {
  /** Of all methods those that a plan and a UTM zone need. */
  "../projs": `
    import etmerc from "proj4/lib/projections/etmerc.js";
    export default ({ Proj }) => Proj.projections.add(etmerc);
  `,
  /** Well-known text is read from when all methods are there. */
  "wkt-parser": `
    let parse = () => {
      throw new Error("Expected all projection methods to be loaded first.");
    };
    export const setParser = (parser) => {
      parse = parser;
    };
    export default (text) => parse(text);
  `,
  /** Datums of other countries come with the other methods. */
  "./constants/Datum": `
    const wgs84 = { towgs84: "0,0,0", ellipse: "WGS84", datumName: "WGS84" };
    const nad83 = { towgs84: "0,0,0", ellipse: "GRS80", datumName: "North_American_Datum_1983" };
    export default { wgs84, nad83, [wgs84.datumName]: wgs84, [nad83.datumName]: nad83 };
  `,
  /** Names of grid squares, which are used nowhere. */
  mgrs: `
    export const forward = () => "";
    export const toPoint = () => [];
    export default {};
  `,
};
const PREFIX = "\0first-projections:";

const ADD_ALL = `
  import proj4 from "proj4";
  import addAll from "proj4/projs.js";
  import parser from "wkt-parser";
  import allDatums from "proj4/lib/constants/Datum.js";
  import { setParser } from "${PREFIX}wkt-parser";
  import datums from "${PREFIX}./constants/Datum";
  Object.assign(datums, allDatums);
  addAll(proj4);
  setParser(parser);
`;

/**
 * Splits proj4: a start with transverse Mercator, and all other methods, datums and the reader of well-known text in
 * `workers/raster/all-projections.ts`.
 */
export function projectionMethods(): Plugin {
  return {
    name: "drystead-projection-methods",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: { id: /^(\.\.\/projs|\.\/constants\/Datum|wkt-parser|mgrs|\0first-projections:.*)$/ },
      handler(source, importer) {
        if (source.startsWith(PREFIX)) return source;
        return importer?.includes("/proj4/lib/") ? PREFIX + source : null;
      },
    },
    load: {
      filter: { id: /^\0first-projections:|\/workers\/raster\/all-projections\.ts$/ },
      handler: (id) =>
        id.startsWith(PREFIX)
          ? FIRST[id.slice(PREFIX.length)]
          : { code: ADD_ALL, moduleSideEffects: true },
    },
  };
}
