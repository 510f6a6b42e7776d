import { computed, effect, type ReadonlySignal } from "@preact/signals";
import { Marker } from "maplibre-gl";
import type { LonLat } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { NoMap } from "../../shared/words/field-map.ts";
import { YOU } from "../../shared/words/field-place.ts";
import { lookAtLine } from "./camera.ts";
import { isPictureLost, isWithoutGraphics } from "./drawable.ts";
import { mapElement, theMap } from "./the-map.ts";
import { view } from "./view.ts";

/** Where a person is, and the radius that it is known to, metres. */
interface Person {
  readonly at: LonLat;
  readonly accuracyM: number;
}

/** The map for the field views: to be looked at, nothing on it is edited. */
export const fieldMap = {
  lack: computed((): NoMap | null => {
    if (isWithoutGraphics.value) return "no-graphics";
    return isPictureLost.value ? "lost" : null;
  }),
  element: mapElement,
  zoomBy(way: 1 | -1): void {
    if (way > 0) theMap()?.zoomIn();
    else theMap()?.zoomOut();
  },
  lookAtLine(line: SizedLine): void {
    const map = theMap();
    if (map) lookAtLine(map, line);
  },
  lookAt([lng, lat]: LonLat): void {
    theMap()?.panTo({ lng, lat });
  },
  metresPerPx: () => view.value.metresPerPx,
  keepPerson,
};

/** Keeps a person on the map, with the circle that they are in. @returns takes them away */
function keepPerson(person: ReadonlySignal<Person | null>): () => void {
  const element = document.createElement("div");
  element.className = "map-person";
  element.setAttribute("role", "img");
  const circle = document.createElement("div");
  circle.className = "map-person-circle";
  const name = document.createElement("span");
  name.textContent = YOU;
  element.append(circle, name);
  const marker = new Marker({ element, anchor: "center" });
  const stop = effect(() => {
    const now = person.value;
    const map = theMap();
    if (!now || !map) {
      marker.remove();
      return;
    }
    const acrossPx = Math.max(32, (2 * now.accuracyM) / view.value.metresPerPx);
    circle.style.width = `${acrossPx}px`;
    circle.style.height = `${acrossPx}px`;
    element.setAttribute("aria-label", YOU);
    marker.setLngLat([...now.at]).addTo(map);
  });
  return () => {
    stop();
    marker.remove();
  };
}
