import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { recall, remember } from "../browser/remember.ts";
import { timeNow } from "../live/time-now.ts";

const KEY = "drystead.profile.schedule";
const wish = signal(recall(KEY, ""));

/** Whether the profile shows the work: as the person last chose, else when there is a forecast; null without any work. */
export const isScheduleOn: ReadonlySignal<boolean | null> = computed(() => {
  const time = timeNow.value?.time;
  if (!time || time.stretches.length === 0) return null;
  return wish.value === "" ? time.startAt !== null : wish.value === "yes";
});

/** Shows the work or hides it, and remembers that on this machine. */
export function toggleSchedule(): void {
  wish.value = isScheduleOn.peek() ? "no" : "yes";
  remember(KEY, wish.value);
}
