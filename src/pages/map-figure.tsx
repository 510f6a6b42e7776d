import type { ReadonlySignal } from "@preact/signals";
import { useEffect, useState } from "preact/hooks";
import { tintWords } from "../../shared/words/water-marks.ts";
import { waterNow } from "../live/water-now.ts";

/** What the pages take of the map. */
export interface MapForPages {
  /** True while the browser has lost the map's graphics: there is nothing to take then. */
  readonly isLost: ReadonlySignal<boolean>;
  /** A picture of the map as it stands, in the light theme, as a data address. */
  readonly picture: () => Promise<string>;
  /** Metres across that picture. */
  readonly widthM: () => number;
}

interface MapFigureProps {
  readonly map: MapForPages;
  readonly heightMm: number;
}

/** The map as on the screen, in the light theme; no higher than the room it is given. */
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
    <section class="sheet-whole" aria-label="Map">
      <h2>Map</h2>
      <figure class="sheet-map">
        <img
          src={picture}
          style={{ maxHeight: `${heightMm}mm` }}
          alt="Map of the site with ground, water and lines"
        />
        <figcaption>As on the screen, north up. {tintWords(waterNow.value)}</figcaption>
      </figure>
    </section>
  );
}

function NoMap() {
  return (
    <section aria-label="Map">
      <h2>Map</h2>
      <p>
        The map is not here: the browser has no graphics to draw it with. Reload the page, or print
        it from another browser.
      </p>
    </section>
  );
}
