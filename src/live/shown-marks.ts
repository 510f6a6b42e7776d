import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { recall, remember } from "../browser/remember.ts";

/**
 * What map and profile can mark beside the marked station; with the weakest places the profile marks where the ground is
 * to be surveyed first and where it was read.
 */
export const MARK_KINDS = ["checks", "weakest", "water"] as const;
export type MarkKind = (typeof MARK_KINDS)[number];

const KEY = "drystead.map.show";
const kept = signal(recall(KEY, ""));

/** The kinds of marks that the person has switched on, kept on this machine; none at first. */
export const shownMarks: ReadonlySignal<ReadonlySet<MarkKind>> = computed(() => {
  const words = kept.value.split(" ");
  return new Set(MARK_KINDS.filter((kind) => words.includes(kind)));
});

/** Switches a kind of mark on or off. */
export function showMarks(kind: MarkKind, isShown: boolean): void {
  const others = MARK_KINDS.filter((each) => each !== kind && shownMarks.peek().has(each));
  kept.value = [...others, ...(isShown ? [kind] : [])].join(" ");
  remember(KEY, kept.value);
}
