import { formatArea, formatLength, formatVolume } from "../../shared/units.ts";
import { unitSystem } from "../state.ts";
import { tracedLine, waterNow } from "../water-now.ts";

/** What the chosen line keeps dry, and how deep the water would stand if it failed. */
export function KeptDry() {
  const line = tracedLine.value;
  if (!line?.dry) return null;
  const system = unitSystem.value;
  const kept = new Set(line.structures.map(({ id }) => id));
  const deep = (waterNow.value?.structures ?? []).filter(
    ({ id, depthM }) => kept.has(id) && depthM !== null,
  );
  return (
    <dl class="amounts" aria-label="Kept dry">
      <div class="amount">
        <dt>Kept dry, of water</dt>
        <dd>
          {formatArea(line.keptDryAreaM2, system)} · {formatVolume(line.keptDryVolumeM3, system)}
        </dd>
      </div>
      {deep.map(({ id, name, depthM }) => (
        <div class="amount" key={id}>
          <dt>{name}, if the levee fails</dt>
          <dd>{formatLength(depthM!, system)} of water</dd>
        </div>
      ))}
    </dl>
  );
}
