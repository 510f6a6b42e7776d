import type { Map as MapLibreMap } from "maplibre-gl";
import { useEffect, useState } from "preact/hooks";
import { fromWords } from "../../shared/words/water.ts";
import { theme } from "../live/state.ts";
import { waterNow } from "../live/water-now.ts";
import { readColours } from "../map/colours.ts";
import { colours } from "../map/colours-now.ts";
import { isPictureLost } from "../map/drawable.ts";
import { bothMaps } from "../map/the-map.ts";

/** How long the map may take to draw itself before it is taken as it is, milliseconds. */
const PATIENCE_MS = 15_000;

/** The map as it stands on the screen, in the colours of the day, for paper; no higher than the room it is given. */
export function MapFigure({ heightMm }: { readonly heightMm: number }) {
  const [picture, setPicture] = useState<string | null>(null);
  const isLost = isPictureLost.value;
  useEffect(() => {
    if (isLost) return;
    let wanted = true;
    mapPicture().then((next) => {
      if (wanted) setPicture(next);
    });
    return () => {
      wanted = false;
    };
  }, [isLost]);
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

/** A picture of the map in the light theme, as a data address; the map is put back as it was. */
async function mapPicture(): Promise<string> {
  const maps = bothMaps();
  const root = document.documentElement;
  const wasDark = theme.peek() === "dark";
  if (wasDark) root.dataset.theme = "light";
  colours.value = readColours();
  await Promise.all(maps.map(settled));
  const picture = onPaper(maps);
  if (wasDark) root.dataset.theme = "dark";
  colours.value = readColours();
  return picture;
}

/** Waits until the map has drawn what it wants to, or long enough. */
function settled(map: MapLibreMap): Promise<void> {
  return new Promise((resolve) => {
    const patience = setTimeout(resolve, PATIENCE_MS);
    map.once("idle", () => {
      clearTimeout(patience);
      resolve();
    });
    map.triggerRepaint();
  });
}

/** The maps one over the other on white: each is painted and taken in the same turn, while its pixels are there. */
function onPaper(maps: readonly MapLibreMap[]): string {
  const sheet = document.createElement("canvas");
  const { width, height } = maps[0]!.getCanvas();
  sheet.width = width;
  sheet.height = height;
  const brush = sheet.getContext("2d")!;
  brush.fillStyle = "#fff";
  brush.fillRect(0, 0, sheet.width, sheet.height);
  for (const map of maps) {
    map.redraw();
    brush.drawImage(map.getCanvas(), 0, 0, width, height);
  }
  return sheet.toDataURL("image/jpeg", 0.86);
}
