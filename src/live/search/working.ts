import { effect, type ReadonlySignal } from "@preact/signals";
import { asFailure } from "../../../shared/failure.ts";
import type { CallOptions } from "../../../shared/messages.ts";
import { tell, withdrawAll } from "../../document/notices.ts";
import { ground } from "../ground.ts";
import { busy } from "../screen.ts";

let under: AbortController | null = null;

/**
 * Runs a search with its progress on the busy bar, where it can be cancelled. A search still under way is
 * cancelled first, and so is one when other elevation data is opened. What is refused is said in a notice.
 * @param until cancels the search when it becomes true
 * @returns null when it was refused or cancelled
 */
export async function working<T>(
  work: (options: CallOptions) => Promise<T>,
  until?: ReadonlySignal<boolean>,
): Promise<T | null> {
  under?.abort();
  withdrawAll("site/");
  const abort = new AbortController();
  under = abort;
  const searched = ground.peek();
  const stopWatching = effect(() => {
    if (until?.value || ground.value !== searched) abort.abort();
  });
  try {
    return await work({
      signal: abort.signal,
      onProgress: (share, doing) => {
        busy.value = { doing, share, cancel: () => abort.abort() };
      },
    });
  } catch (thrown) {
    const failure = asFailure(thrown);
    if (failure.code !== "cancelled") tell("error", failure);
    return null;
  } finally {
    stopWatching();
    if (under === abort) {
      under = null;
      busy.value = null;
    }
  }
}
