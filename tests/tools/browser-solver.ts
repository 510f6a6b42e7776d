import type { Plugin } from "vite";

const NO_NODE = "\0no-node-module";

/** The solver asks for `node:module` in Node alone; what is built for the browser has an empty module in its place. */
export function browserSolver(): Plugin {
  return {
    name: "drystead-browser-solver",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: { id: /^node:module$/ },
      handler: (_, importer) => (importer?.includes("/highs/") ? NO_NODE : null),
    },
    load: {
      filter: { id: /^\0no-node-module$/ },
      handler: () => "export const createRequire = null;",
    },
  };
}
