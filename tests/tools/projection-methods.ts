import type { Plugin } from "vite";

const FIRST = "\0first-projection-methods";

/** What `proj4/projs.js` is for all methods, for those that a plan and a UTM zone need. */
const ADD_FIRST = `
  import etmerc from "proj4/lib/projections/etmerc.js";
  export default ({ Proj }) => Proj.projections.add(etmerc);
`;

const ADD_ALL = `
  import proj4 from "proj4";
  import addAll from "proj4/projs.js";
  addAll(proj4);
`;

/** Splits proj4: a start with transverse Mercator, and all other methods in `workers/raster/all-projections.ts`. */
export function projectionMethods(): Plugin {
  return {
    name: "drystead-projection-methods",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: { id: /^\.\.\/projs$/ },
      handler: (_, importer) => (importer?.includes("/proj4/lib/") ? FIRST : null),
    },
    load: {
      filter: { id: /first-projection-methods$|\/workers\/raster\/all-projections\.ts$/ },
      handler: (id) => (id === FIRST ? ADD_FIRST : { code: ADD_ALL, moduleSideEffects: true }),
    },
  };
}
