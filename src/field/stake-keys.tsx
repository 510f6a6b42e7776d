import type { ComponentChildren } from "preact";
import { formatStation } from "../../shared/units.ts";
import { unitSystem } from "../live/screen.ts";
import { type AtStake, besideStake, goToStake } from "./at.ts";
import { isFollowing } from "./gps.ts";

interface StakeKeysProps {
  readonly at: AtStake;
  /** Between the two. */
  readonly children?: ComponentChildren;
}

/** To the stake before and after, by hand. */
export function StakeKeys({ at, children }: StakeKeysProps) {
  return (
    <div class="crew-keys">
      <StakeKey at={at} way={-1} />
      {children}
      <StakeKey at={at} way={1} />
    </div>
  );
}

function StakeKey({ at, way }: { readonly at: AtStake; readonly way: 1 | -1 }) {
  const next = besideStake(at, way);
  const station = next && formatStation(next.station.chainageM, unitSystem.value);
  const arrow = <Arrow way={way} />;
  return (
    <button
      type="button"
      class="crew-key"
      disabled={next === null}
      aria-label={station ? `Stake ${station}` : "No more stakes"}
      onClick={() => {
        isFollowing.value = false;
        if (next) goToStake(at, next.index);
      }}
    >
      {way < 0 && arrow}
      {station ?? "End"}
      {way > 0 && arrow}
    </button>
  );
}

function Arrow({ way }: { readonly way: 1 | -1 }) {
  return (
    <svg class="crew-arrow" width="10" height="16" viewBox="0 0 10 16" aria-hidden="true">
      <path d={way < 0 ? "M8 2L2 8l6 6" : "M2 2l6 6-6 6"} />
    </svg>
  );
}
