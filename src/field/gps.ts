import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import { type Fix, type PlaceOnLine, placeOnLine } from "../../shared/field/place-on-line.ts";
import type { GpsTrouble } from "../../shared/words/field-place.ts";
import { recall, remember } from "../browser/remember.ts";
import { atStake, goToStake } from "./at.ts";
import { panel } from "./panel.ts";

/** What the receiver of this device says. */
export type Gps =
  | { readonly kind: "off" | "waiting" | GpsTrouble }
  | { readonly kind: "fix"; readonly fix: Fix };

const KEY = "drystead.gps";
/** A position older than this is not where one is now, milliseconds. */
const OLDEST_MS = 10_000;
/** How long a position may take before it is said that there is none, milliseconds. */
const PATIENCE_MS = 30_000;
/** Reasons of the Geolocation API (W3C): permission denied, position unavailable, timeout. */
const TROUBLES: readonly GpsTrouble[] = ["none", "refused", "none", "lost"];

const state = signal<Gps>({ kind: "off" });
/** Whether the stake shown follows the position; going to another by hand ends that. */
export const isFollowing = signal(true);
let watching: number | null = null;

export const gps: ReadonlySignal<Gps> = state;

/** Where on the chosen line the last position is; null without one. */
export const placeNow: ReadonlySignal<PlaceOnLine | null> = computed(() => {
  const [now, at] = [state.value, atStake.value];
  return now.kind === "fix" && at ? placeOnLine(at.line.walk, at.staked, now.fix) : null;
});

/** Starts to follow the position of this device; asks for permission where it was not given. */
export function startGps(): void {
  remember(KEY, "on");
  isFollowing.value = true;
  if (watching !== null) return;
  if (!("geolocation" in navigator)) {
    state.value = { kind: "none" };
    return;
  }
  state.value = { kind: "waiting" };
  watching = navigator.geolocation.watchPosition(
    ({ coords: { longitude, latitude, accuracy } }) => {
      state.value = { kind: "fix", fix: { at: [longitude, latitude], accuracyM: accuracy } };
    },
    ({ code }) => {
      state.value = { kind: TROUBLES[code] ?? "none" };
      if (state.value.kind === "refused") stop();
    },
    { enableHighAccuracy: true, maximumAge: OLDEST_MS, timeout: PATIENCE_MS },
  );
}

/** Stops following the position; it is not taken up again until someone asks for it. */
export function leaveGps(): void {
  remember(KEY, "off");
  stop();
  state.value = { kind: "off" };
}

function stop(): void {
  if (watching !== null) navigator.geolocation.clearWatch(watching);
  watching = null;
}

/** Keeps the stake in step with the position while it tells one stake from the next. @returns stops it */
export function keepFollowing(): () => void {
  if (recall(KEY, "off") === "on") startGps();
  const end = effect(() => {
    const place = placeNow.value;
    const isGood = place && !place.isPoor && !place.isOff && place.alsoM === null;
    const at = atStake.peek();
    if (isGood && isFollowing.value && panel.value === null && at && at.index !== place.stake)
      goToStake(at, place.stake);
  });
  return () => {
    end();
    stop();
    state.value = { kind: "off" };
  };
}
