import type { Map as MapLibreMap } from "maplibre-gl";
import { theme } from "../live/screen.ts";
import { readColours } from "./colours.ts";
import { colours } from "./colours-now.ts";
import { bothMaps, theMap } from "./the-map.ts";
import { view } from "./view.ts";

/** Metres from the left edge of the map to its right one, as it stands. */
export function mapWidthM(): number {
  const widthPx = theMap()?.getCanvas().clientWidth ?? 0;
  return view.peek().metresPerPx * widthPx;
}

/** How long the map may take to draw itself before it is taken as it is, milliseconds. */
const PATIENCE_MS = 15_000;

/** A picture of the map in the light theme, as a data address; the map is put back as it was. Not to be called while it is lost. */
export async function mapPicture(): Promise<string> {
  const maps = bothMaps() ?? [];
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
