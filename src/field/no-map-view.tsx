import { type NoMap, noMapWords } from "../../shared/words/field-map.ts";
import type { AtStake } from "./at.ts";
import { LineStrip } from "./line-strip.tsx";
import { PlaceLine } from "./place-line.tsx";
import { Read } from "./read.tsx";

interface NoMapViewProps {
  readonly at: AtStake;
  readonly why: NoMap;
}

/** In the place of the map where there is none: that it is not shown, and the stake along the line instead. */
export function NoMapView({ at, why }: NoMapViewProps) {
  const [title, ...rest] = noMapWords(why);
  return (
    <div class="crew-no-map">
      <Read label="Map">
        <div role="alert">
          <p class="crew-said">{title}</p>
          {rest.map((each) => (
            <p key={each}>{each}</p>
          ))}
        </div>
        <PlaceLine at={at} />
      </Read>
      <LineStrip at={at} />
    </div>
  );
}
