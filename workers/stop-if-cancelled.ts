import { refusal } from "../shared/failure.ts";
import type { CallOptions } from "../shared/messages.ts";

/** @throws Refusal `cancelled` once nobody wants the answer */
export function stopIfCancelled(options: CallOptions | undefined): void {
  if (options?.signal?.aborted) throw refusal("cancelled", { overtaken: false });
}
