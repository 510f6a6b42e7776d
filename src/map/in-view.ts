import { computed, type ReadonlySignal } from "@preact/signals";
import { LOW, type WetMask } from "../../shared/water-types.ts";
import { ground } from "../live/ground.ts";
import { pictureNow } from "../live/water-now.ts";
import { holeBoxes } from "./hole-boxes.ts";
import { restingView, type View } from "./view.ts";

/** Less than this of the map cannot be seen, square CSS pixels. */
const LEAST_SEEN_PX2 = 60;

/** Whether the map shows low ground that the traced water does not reach. */
export const lowInView: ReadonlySignal<boolean> = computed(() => isInView(LOW));

/** Whether the map shows missing data, so that a hole is never taken for ground. */
export const holeInView: ReadonlySignal<boolean> = computed(() => {
  const open = ground.value;
  if (!open || (open.holeShare === 0 && !open.fromOverview)) return false;
  const view = restingView.value;
  return holeBoxes.value.some(
    ([west, south, east, north]) =>
      view.west < east && west < view.east && view.south < north && south < view.north,
  );
});

function isInView(code: number): boolean {
  const view = restingView.value;
  return pictureNow.value?.masks?.some((mask) => isSeen(mask, code, view)) ?? false;
}

/** Whether enough cells of a code lie in the view, by the mask's corners taken as a parallelogram. */
function isSeen({ codes, columns, rows, corners }: WetMask, code: number, view: View): boolean {
  const [[lon0, lat0], [lon1, lat1], , [lon3, lat3]] = corners;
  const [acrossLon, acrossLat] = [(lon1 - lon0) / columns, (lat1 - lat0) / columns];
  const [downLon, downLat] = [(lon3 - lon0) / rows, (lat3 - lat0) / rows];
  const { west, south, east, north, metresPerPx } = view;
  const perLat = 111_320 / metresPerPx;
  const perLon = perLat * Math.cos((view.lat * Math.PI) / 180);
  const cellPx2 = Math.abs(acrossLon * downLat - acrossLat * downLon) * perLon * perLat;
  let seen = 0;
  for (let i = 0; i < codes.length; i++) {
    if (codes[i] !== code) continue;
    const [column, row] = [(i % columns) + 0.5, Math.floor(i / columns) + 0.5];
    const lon = lon0 + column * acrossLon + row * downLon;
    const lat = lat0 + column * acrossLat + row * downLat;
    if (lon < west || lon > east || lat < south || lat > north) continue;
    seen += cellPx2;
    if (seen >= LEAST_SEEN_PX2) return true;
  }
  return false;
}
