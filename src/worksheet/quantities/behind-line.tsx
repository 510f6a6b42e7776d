import { formatArea, formatLength, formatVolume } from "../../../shared/units.ts";
import { chosenId } from "../../document/chosen.ts";
import { traced } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { waterNow } from "../../live/water-now.ts";

/**
 * What the water does not reach overland with the chosen line, and how deep it would be if the line failed; while the
 * water is followed anew, as it was last, and marked as such, so that nothing below it jumps.
 */
export function BehindLine() {
  const trace = traced.value?.trace;
  const line = trace?.alternatives.find(({ id }) => id === chosenId.value);
  if (!line?.dry) return null;
  const system = unitSystem.value;
  const kept = new Set(line.structures.map(({ id }) => id));
  const deep = (trace?.structures ?? []).filter(
    ({ id, depthM }) => kept.has(id) && depthM !== null,
  );
  return (
    <dl class="amounts" aria-label="Not reached overland" data-stale={waterNow.value === null}>
      <div class="amount">
        <dt>Not reached overland</dt>
        <dd>
          {formatArea(line.notReachedAreaM2, system)} ·{" "}
          {formatVolume(line.notReachedVolumeM3, system)}
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
