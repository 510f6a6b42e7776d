import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import { formatLength, lengthIn, type UnitSystem } from "../../shared/units.ts";
import { plan } from "../document/store.ts";
import { chosenLine, ground, unitSystem } from "../state.ts";

/** What the colours on the map mean, and what the tint of the water does not say. */
export function Legend() {
  const limitM = plan.value.practice.limitM;
  const hasHoles = (ground.value?.holeShare ?? 0) > 0;
  const line = chosenLine.value;
  return (
    <section class="map-legend" aria-label="Legend">
      {line && (
        <dl>
          {classLabels(limitM, unitSystem.value).map((label, index) => (
            <div key={label}>
              <dt class={`swatch swatch-levee-${index + 1}`} aria-hidden="true" />
              <dd>{label}</dd>
            </div>
          ))}
        </dl>
      )}
      <dl>
        <div>
          <dt class="swatch swatch-water" aria-hidden="true" />
          <dd>below the surface</dd>
        </div>
        {hasHoles && (
          <div>
            <dt class="swatch swatch-hole" aria-hidden="true" />
            <dd>no ground data</dd>
          </div>
        )}
      </dl>
      <p>Low ground is tinted whether or not the river reaches it: connection is not traced yet.</p>
    </section>
  );
}

/** "to 1 ft", "2", "3", "4, the limit", "over it", for the limit in use. */
function classLabels(limitM: number, system: UnitSystem): string[] {
  const steps = HEIGHT_CLASSES - 1;
  const digits = wholeSteps(limitM, system) ? 0 : system === "us" ? 1 : 2;
  const labels = Array.from({ length: steps }, (_, index) => {
    const topM = (limitM * (index + 1)) / steps;
    if (index === 0) return `to ${formatLength(topM, system, digits)}`;
    const bare = lengthIn(topM, system).toFixed(digits);
    return index === steps - 1 ? `${bare}, the limit` : bare;
  });
  return [...labels, "over it"];
}

function wholeSteps(limitM: number, system: UnitSystem): boolean {
  const step = lengthIn(limitM, system) / (HEIGHT_CLASSES - 1);
  return Math.abs(step - Math.round(step)) < 1e-6;
}
