import { useRef, useState } from "preact/hooks";
import { formatLength, lengthFrom, lengthIn, type UnitSystem } from "../../../shared/units.ts";
import { edit } from "../../document/edits/alternatives.ts";
import { settingValue, withSetting } from "../../document/edits/settings.ts";
import { endGesture, plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { leaveMoment } from "../../live/time-now.ts";
import { tracedLine } from "../../live/water-now.ts";
import { isOnSpan, type Span, shareOn, spanAround } from "../../ui/slider-span.ts";

/** How far the slider reaches to either side of the figure, in the person's unit. */
const REACH: Readonly<Record<UnitSystem, number>> = { us: 3, metric: 1 };
const STEP: Readonly<Record<UnitSystem, number>> = { us: 0.05, metric: 0.01 };

/**
 * Moves the water while it is dragged: tint, heights and totals follow. One drag is one step of undo. The span
 * stays put during a drag and centres itself again when the figure is typed outside it.
 */
export function StageSlider() {
  const system = unitSystem.value;
  const byStage = plan.value.water.by === "stage";
  const path = byStage ? "water.stageM" : "water.elevationM";
  const valueM = settingValue(plan.value, path) ?? 0;
  const value = lengthIn(valueM, system);
  const key = `${path} ${system}`;
  const [span, setSpan] = useState({ key, ...spanAround([value], REACH[system]) });
  const gesture = useRef(0);
  const fits = span.key === key && isOnSpan(value, span);
  const { least, most } = fits ? span : spanAround([value], REACH[system]);
  if (!fits) setSpan({ key, least, most });
  const move = (next: number) =>
    edit({
      note: byStage ? "Move the sized-for stage" : "Move the sized-for water",
      gesture: `stage-${gesture.current}`,
      change: (now) => withSetting(now, path, lengthFrom(Number(next.toFixed(2)), system)),
    });
  const begin = () => {
    leaveMoment();
    gesture.current += 1;
    endGesture();
  };
  const words = formatLength(valueM, system, 2);
  if (settingValue(plan.value, path) === null) return null;
  const shareOf = (level: number) => shareOn(level, { least, most });
  const overtopsAt = overtopsM(valueM);
  const overtops = overtopsAt === null ? null : lengthIn(overtopsAt, system);
  return (
    <div class="stage-slider">
      <div class="stage-track">
        <input
          type="range"
          aria-label={byStage ? "Stage" : "Water-surface elevation"}
          aria-valuetext={words}
          min={least}
          max={most}
          step={STEP[system]}
          value={value}
          style={{
            "--filled": `${shareOf(value) * 100}%`,
            "--spare": `${shareOf(lengthIn(valueM + plan.value.water.freeboardM, system)) * 100}%`,
          }}
          onPointerDown={begin}
          onFocus={begin}
          onInput={(event) => move(event.currentTarget.valueAsNumber)}
        />
        {overtops !== null && isOnSpan(overtops, { least, most }) && (
          <span class="stage-overtops" style={{ "--at": shareOf(overtops) }} />
        )}
      </div>
      <div class="stage-ticks" aria-hidden="true">
        {ticksOf({ least, most }).map((level) => (
          <span key={level} style={{ "--at": shareOf(level) }}>
            {level}
          </span>
        ))}
      </div>
    </div>
  );
}

/** Most labels under the slider. */
const MOST_TICKS = 5;

/** Whole units to name, evenly, the lowest first. */
function ticksOf({ least, most }: Span): readonly number[] {
  const step = Math.ceil((most - least) / (MOST_TICKS - 1));
  const count = Math.floor((most - least) / step) + 1;
  return Array.from({ length: count }, (_, index) => least + index * step);
}

/** The level above which the chosen line overtops, as the plan gives its water, metres; null where not known. */
function overtopsM(valueM: number): number | null {
  const line = tracedLine.value;
  return line?.dry && line.firstOver ? valueM + line.firstOver.riseM : null;
}
