import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import type { AtStake } from "./at.ts";
import { stretchesToHeight } from "./marking.ts";
import { ProfileStrip } from "./profile-strip.tsx";

/** The line along its length with the stake one is at, and what is up to height by the plan as it is. */
export function LineStrip({ at }: { readonly at: AtStake }) {
  return (
    <ProfileStrip
      line={at.line}
      atM={at.station.chainageM}
      limitM={plan.value.practice.limitM}
      system={unitSystem.value}
      done={stretchesToHeight(at)}
    />
  );
}
