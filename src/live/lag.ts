import { effect, type ReadonlySignal, signal } from "@preact/signals";

/**
 * A drag is followed by answers that are each a frame or two late: that is no lag. One that nothing has followed
 * for so long is, milliseconds.
 */
const GRACE_MS = 120;

/** True once no answer has come for a moment and the last one is not of what is asked now. */
export function lagOf(
  isCurrent: ReadonlySignal<boolean>,
  answer: ReadonlySignal<unknown>,
): ReadonlySignal<boolean> {
  const lags = signal(false);
  let grace: ReturnType<typeof setTimeout> | undefined;
  effect(() => {
    answer.value;
    clearTimeout(grace);
    if (isCurrent.value) lags.value = false;
    else {
      grace = setTimeout(() => {
        lags.value = true;
      }, GRACE_MS);
    }
  });
  return lags;
}
