import type { CallOptions } from "../../shared/messages.ts";
import { stopIfCancelled } from "../stop-if-cancelled.ts";

const DOING = "Choosing buildings";

/**
 * Lets messages in between two solves, which do not pause themselves, and says how far the work is.
 * @throws Refusal `cancelled`
 */
export async function betweenSolves(options: CallOptions | undefined, share: number) {
  options?.onProgress?.(share, DOING);
  await new Promise((resolve) => setTimeout(resolve, 0));
  stopIfCancelled(options);
}
