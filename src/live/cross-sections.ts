import type { Plan } from "../../shared/plan.ts";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { engine } from "../engine.ts";

/** Cross-sections of a line at several chainages, with ground beyond the toes; all metres. */
export function crossSectionsAt(
  plan: Plan,
  id: string,
  chainagesM: readonly number[],
  marginM: number,
): Promise<CrossSection[]> {
  return Promise.all(
    chainagesM.map((chainageM) => engine.crossSection({ plan, id, chainageM, marginM })),
  );
}
