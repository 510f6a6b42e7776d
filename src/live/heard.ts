import { effect, untracked } from "@preact/signals";
import { tell } from "../document/notices.ts";
import { broken, metMark, restarted } from "../engine.ts";
import { markMet } from "./ground.ts";
import { sizeAgain } from "./sizing-clock.ts";

/** Takes in what the engine says unasked: a worker that started again, an error in it, a height that may mark missing data. */
export function hearEngine(): void {
  effect(() => {
    const last = restarted.value;
    if (!last) return;
    untracked(() => {
      if (last.failure) tell("error", last.failure);
      sizeAgain.value += 1;
    });
  });
  effect(() => {
    const failure = broken.value;
    if (failure) untracked(() => tell("error", failure));
  });
  effect(() => {
    if (metMark.value) markMet.value = metMark.value;
  });
}
