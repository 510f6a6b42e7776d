import { Refusal } from "../../shared/failure.ts";
import type { CallOptions } from "../../shared/messages.ts";

const DOING = "Choosing buildings";

/**
 * Lets messages in between two solves, which do not pause themselves, and says how far the work is.
 * @throws Refusal `cancelled`
 */
export async function betweenSolves(options: CallOptions | undefined, share: number) {
  options?.onProgress?.(share, DOING);
  await new Promise((resolve) => setTimeout(resolve, 0));
  if (!options?.signal?.aborted) return;
  throw new Refusal("cancelled", "The work was cancelled.", "Start it again when you want it.");
}
