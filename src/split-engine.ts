import type { Engine, OpenTerrainRequest } from "../shared/messages.ts";

/**
 * One engine out of two: `long` does what may take seconds (search, improve, trace, sideways cost), `quick` all
 * the rest, so that a search never keeps a line from being sized. Both read the same files by slices and keep no
 * more of them than their own bounded store. `quick` opens first; a long call waits until `long` has the same
 * files open, and fails as the opening does: the ground that was open before is never searched or traced for the
 * new one. An opening that failed is tried again at the next long call.
 */
export function splitEngine(quick: Engine, long: Engine): Engine {
  let files: OpenTerrainRequest | null = null;
  let ready: Promise<unknown> | null = null;

  const open = (): Promise<unknown> | null => {
    if (!files) return null;
    const opening = long.openTerrain(files);
    opening.catch(() => {
      if (ready === opening) ready = null;
    });
    ready = opening;
    return opening;
  };
  const whenReady =
    <Asked, Options, Answer>(verb: (request: Asked, options?: Options) => Promise<Answer>) =>
    async (request: Asked, options?: Options): Promise<Answer> => {
      await (ready ?? open());
      return verb(request, options);
    };

  return {
    ...quick,
    openTerrain: async (request, options) => {
      const summary = await quick.openTerrain(request, options);
      files = request;
      open();
      return summary;
    },
    traceWater: whenReady(long.traceWater),
    siteRing: whenReady(long.siteRing),
    improveLine: whenReady(long.improveLine),
    sidewaysCost: whenReady(long.sidewaysCost),
  };
}
