import type { GroundSampler } from "../../shared/ground.ts";
import type { Terrain } from "./terrain.ts";

/** The last correction of a terrain: what is worked out for a terrain is kept by it. */
const last = new WeakMap<Terrain, { readonly correctionM: number; readonly terrain: Terrain }>();

/**
 * The same terrain with all its ground raised by a plan's correction, metres, for what is counted; pictures, summary
 * and probe show what the files have. No data stays NaN.
 */
export function correctedTerrain(terrain: Terrain, correctionM: number): Terrain {
  if (correctionM === 0) return terrain;
  const known = last.get(terrain);
  if (known?.correctionM === correctionM) return known.terrain;
  const made = raisedTerrain(terrain, correctionM);
  last.set(terrain, { correctionM, terrain: made });
  return made;
}

function raisedTerrain(terrain: Terrain, correctionM: number): Terrain {
  const samplers = new WeakMap<GroundSampler, GroundSampler>();
  const raised = (sampler: GroundSampler): GroundSampler => {
    const { heightAt, ...rest } = sampler;
    const made = samplers.get(sampler) ?? {
      ...rest,
      heightAt: (xM: number, yM: number) => heightAt(xM, yM) + correctionM,
    };
    samplers.set(sampler, made);
    return made;
  };
  const { samplerFor, ownSampler, cells } = terrain;
  return {
    ...terrain,
    samplerFor: async (plane, box) => raised(await samplerFor(plane, box)),
    ownSampler: async (plane, box) => raised(await ownSampler(plane, box)),
    cells: {
      ...cells,
      read: async (window) => {
        const read = await cells.read(window);
        return { ...read, heightsM: read.heightsM.map((heightM) => heightM + correctionM) };
      },
    },
  };
}
