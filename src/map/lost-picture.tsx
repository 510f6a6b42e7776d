import { isPictureLost, isWithoutGraphics } from "./drawable.ts";

/** Stands in the place of the map while the browser has lost its graphics: an empty map would look dry. */
export function LostPicture() {
  if (!isPictureLost.value || isWithoutGraphics.value) return null;
  return (
    <div class="map-lost" role="alert">
      <p>
        <strong>The map is not shown: the browser lost its graphics.</strong>
      </p>
      <p>
        Bags, checks, profile and cross-section go on. The map comes back and shows the current
        water. If it does not, save the plan and reload the page.
      </p>
    </div>
  );
}
