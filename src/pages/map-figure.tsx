import type { ReadonlySignal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { fromWords } from "../../shared/words/water.ts";
import { waterNow } from "../live/water-now.ts";

/** What the pages take of the map. */
export interface MapForPages {
  /** True while the browser has lost the map's graphics: there is nothing to take then. */
  readonly isLost: ReadonlySignal<boolean>;
  /** A picture of the map as it stands, in the light theme, as a data address. */
  readonly picture: () => Promise<string>;
}

interface MapFigureProps {
  readonly map: MapForPages;
  readonly heightMm: number;
}

/** The map as it stands on the screen, in the colours of the day, for paper; no higher than the room it is given. */
export function MapFigure({ map, heightMm }: MapFigureProps) {
  const [picture, setPicture] = useState<string | null>(null);
  const isLost = map.isLost.value;
  useEffect(() => {
    if (isLost) return;
    let wanted = true;
    map.picture().then((next) => {
      if (wanted) setPicture(next);
    });
    return () => {
      wanted = false;
    };
  }, [isLost, map]);
  if (isLost) return <NoMap />;
  if (!picture) return null;
  return (
    <section class="sheet-part sheet-page" aria-label="Map">
      <h2>Map</h2>
      <figure class="sheet-map">
        <img
          src={picture}
          style={{ maxHeight: `${heightMm}mm` }}
          alt="The map of the site with its ground, water and lines"
        />
        <figcaption>As on the screen, north up. {tintWords()}</figcaption>
      </figure>
    </section>
  );
}

function NoMap() {
  return (
    <section class="sheet-part" aria-label="Map">
      <h2>Map</h2>
      <p>The map is not shown: the browser lost its graphics. Reload the page to print it.</p>
    </section>
  );
}

function tintWords(): string {
  const trace = waterNow.value;
  if (!trace)
    return "Tinted: everything lower than the water, whether or not the river reaches it.";
  return `Tinted: water connected to ${fromWords(trace)}. Dotted: low, not connected. Hatched thinly: kept dry by the line.`;
}
