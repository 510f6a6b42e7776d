import {
  type Answer,
  type CallOptions,
  type Engine,
  engineOf,
  type OpenTerrainRequest,
  type RequestOf,
  type Verb,
} from "../../shared/messages.ts";

/** Which of the two answers a verb. */
const ANSWERED_BY: Readonly<Record<Verb, "quick" | "long">> = {
  openTerrain: "quick",
  heightRange: "quick",
  size: "quick",
  heightTile: "quick",
  holeTile: "quick",
  crossSection: "quick",
  simulateGround: "long",
  contours: "quick",
  probe: "quick",
  toGrid: "quick",
  lonLatOf: "quick",
  traceWater: "long",
  findRing: "long",
  improveLine: "long",
  sidewaysCost: "long",
  chooseLines: "long",
  moreBuys: "long",
  bagCurve: "long",
  traceBuildings: "long",
  checkBuilding: "long",
  checkGroup: "long",
};

/**
 * One engine out of two: `long` does what may take seconds (search, improve, trace, sideways cost, simulated ground), `quick` all
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
    <V extends Verb>(verb: V): Answer<V> =>
    async (request: RequestOf<V>, options?: CallOptions) => {
      await (ready ?? open());
      return long[verb](request, options);
    };

  return {
    ...engineOf((verb) => (ANSWERED_BY[verb] === "long" ? whenReady(verb) : quick[verb])),
    openTerrain: async (request, options) => {
      const summary = await quick.openTerrain(request, options);
      files = request;
      open();
      return summary;
    },
  };
}
