import { computed, type ReadonlySignal, signal } from "@preact/signals";
import { recall, remember } from "../browser/remember.ts";
import { whyHere } from "../live/search/why-here.ts";

/** What is shown above the profile: one thing at a time. */
export const LANES = ["checks", "work", "sideways"] as const;
export type Lane = (typeof LANES)[number];

const KEY = "drystead.profile.lane";
const kept = signal<Lane>(recall(KEY, "checks") === "work" ? "work" : "checks");

/** The lane that is shown; what a move sideways saves is shown wherever the screen shows it, and is not kept. */
export const lane: ReadonlySignal<Lane> = computed(() => (whyHere.value ? "sideways" : kept.value));

/** Shows a lane, and remembers that on this machine. */
export function chooseLane(next: Lane): void {
  whyHere.value = next === "sideways";
  if (next === "sideways") return;
  kept.value = next;
  remember(KEY, next);
}
