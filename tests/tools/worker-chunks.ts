import type { Plugin } from "vite";

const ASKED = "?worker&url";
const OURS = "\0worker-chunk:";

/** The module that builds a worker's source file as a chunk and gives its address. */
export const chunkOf = (file: string): string => OURS + file;

/**
 * Builds our worker as one more entry of the page's own build, so that what page and worker both need is one file
 * that is fetched once. Vite alone would build the worker apart, with a second copy of everything. A package's worker
 * is left to Vite.
 */
export function workerChunks(): Plugin {
  return {
    name: "drystead-worker-chunks",
    apply: "build",
    enforce: "pre",
    resolveId: {
      filter: { id: /^\..*\?worker&url$/ },
      async handler(source, importer) {
        const found = await this.resolve(source.slice(0, -ASKED.length), importer);
        return found && chunkOf(found.id);
      },
    },
    load: {
      filter: { id: /^\0worker-chunk:/ },
      handler(id) {
        const chunk = this.emitFile({ type: "chunk", id: id.slice(OURS.length) });
        return `export default import.meta.ROLLUP_FILE_URL_${chunk};`;
      },
    },
  };
}
