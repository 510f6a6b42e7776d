import { computed, type ReadonlySignal } from "@preact/signals";
import { type ChecksAtStake, checksAtStake } from "../../shared/field/at-stake.ts";
import {
  type Staked,
  type StakedStretch,
  stakeBeside,
  stakedLine,
  stakeNear,
  stretchFrom,
} from "../../shared/field/stakes.ts";
import type { SizedLine, Station } from "../../shared/sizing-types.ts";
import { chosenLine } from "../live/results.ts";
import { markedM } from "../live/screen.ts";
import { chosenChecks } from "../live/water-now.ts";

/** The stake that the field views are at. */
export interface AtStake {
  readonly line: SizedLine;
  readonly staked: Staked;
  readonly index: number;
  readonly station: Station;
  /** From here to the next stake; null at the last stake of a line that does not close. */
  readonly stretch: StakedStretch | null;
}

const staked: ReadonlySignal<{ readonly line: SizedLine; readonly staked: Staked } | null> =
  computed(
    () => chosenLine.value && { line: chosenLine.value, staked: stakedLine(chosenLine.value) },
  );

/** The stake nearest to the marked station, the first where none is marked; null before the line is sized. */
export const atStake: ReadonlySignal<AtStake | null> = computed(() => {
  const now = staked.value;
  const index = now ? stakeNear(now.staked, markedM.value ?? 0) : -1;
  const station = now?.staked.stakes[index];
  if (!now || !station) return null;
  return { ...now, index, station, stretch: stretchFrom(now.staked, index) };
});

/** The checks at that stake. */
export const checksHere: ReadonlySignal<ChecksAtStake | null> = computed(() => {
  const at = atStake.value;
  return at && checksAtStake(at.line, chosenChecks.value, at.staked, at.index);
});

/** Goes to a stake by its index. */
export function goToStake({ staked: { stakes } }: Pick<AtStake, "staked">, index: number): void {
  const stake = stakes[index];
  if (stake) markedM.value = stake.chainageM;
}

/** The stake before (-1) or after (+1), by its index and station; null at an end. */
export function besideStake(
  { staked: of, index }: AtStake,
  way: 1 | -1,
): { readonly index: number; readonly station: Station } | null {
  const next = stakeBeside(of, index, way);
  return next === null ? null : { index: next, station: of.stakes[next]! };
}
