import { useRef } from "preact/hooks";
import { isWaterGiven, waterElevationAtGauge } from "../../shared/stage.ts";
import {
  formatLength,
  grouped,
  lengthFrom,
  lengthIn,
  type UnitSystem,
} from "../../shared/units.ts";
import { BAND_NAMES, BUILDINGS, floodWords } from "../../shared/words/buildings-answer.ts";
import { ringedOfFlooded } from "../../shared/words/buildings-forecasts.ts";
import { edit } from "../document/edits/alternatives.ts";
import { changeSetting, settingValue, withSetting } from "../document/edits/settings.ts";
import { endGesture, plan } from "../document/store.ts";
import { bandChoices } from "../live/buildings/choosing.ts";
import { bandsNow } from "../live/buildings/levels.ts";
import { bandsFlooded } from "../live/buildings/shown.ts";
import { unitSystem } from "../live/screen.ts";
import { NumberField } from "../ui/number-field.tsx";
import { settingQuantity } from "../ui/quantity.ts";
import { rangeOf } from "../ui/range.ts";
import { isOnSpan, shareOn, spanAround } from "../ui/slider-span.ts";

const REACH: Readonly<Record<UnitSystem, number>> = { us: 2, metric: 0.6 };
const STEP: Readonly<Record<UnitSystem, number>> = { us: 0.1, metric: 0.02 };

/** The water that all lines are sized for: the plan's own, with the forecast's crests marked where it has bands. */
export function StageField() {
  const now = plan.value;
  const system = unitSystem.value;
  const byStage = now.water.by === "stage";
  const path = byStage ? "water.stageM" : "water.elevationM";
  const label = byStage ? BUILDINGS.stage : BUILDINGS.elevation;
  return (
    <section class="county-pane county-stage">
      <NumberField
        label={label}
        value={settingValue(now, path)}
        quantity={settingQuantity(path)}
        range={rangeOf(path)}
        system={system}
        blank={BUILDINGS.notTyped}
        onValue={(value, gesture) =>
          value === null ? undefined : changeSetting(path, label, value, gesture)
        }
      />
      {isWaterGiven(now.water) && <Slider path={path} label={label} />}
    </section>
  );
}

interface SliderProps {
  readonly path: "water.stageM" | "water.elevationM";
  readonly label: string;
}

function Slider({ path, label }: SliderProps) {
  const system = unitSystem.value;
  const now = plan.value;
  const valueM = settingValue(now, path) ?? 0;
  const marks = bandMarks(valueM, system);
  const value = lengthIn(valueM, system);
  const ends = [value, ...marks.map(({ at }) => at)];
  const span = useRef({ key: "", least: 0, most: 0 });
  const key = `${path} ${system} ${marks.map(({ at }) => at.toFixed(3)).join()}`;
  if (span.current.key !== key || !isOnSpan(value, span.current)) {
    span.current = { key, ...spanAround(ends, REACH[system] / 2) };
  }
  const flooded = bandsFlooded.value;
  const chosen = bandChoices.value;
  const { least, most } = span.current;
  const shareOf = (at: number) => shareOn(at, span.current);
  const gesture = useRef(0);
  const begin = () => {
    gesture.current += 1;
    endGesture();
  };
  return (
    <div class="stage-slider">
      <div class="stage-track">
        <input
          type="range"
          aria-label={label}
          aria-valuetext={formatLength(valueM, system, 2)}
          min={least}
          max={most}
          step={STEP[system]}
          value={value}
          style={{ "--filled": `${shareOf(value) * 100}%` }}
          onPointerDown={begin}
          onFocus={begin}
          onInput={(event) => {
            const next = lengthFrom(Number(event.currentTarget.valueAsNumber.toFixed(2)), system);
            edit({
              note: `Change ${label.toLowerCase()}`,
              gesture: `county-stage-${gesture.current}`,
              change: (of) => withSetting(of, path, next),
            });
          }}
        />
        {marks.map(({ band, at }) => (
          <span key={band} class="stage-overtops" style={{ "--at": shareOf(at) }} />
        ))}
      </div>
      {marks.length > 0 ? (
        <ul class="county-bands">
          {marks.map(({ band, at }) => (
            <li key={band}>
              <b>{BAND_NAMES[band]}</b> {grouped(at, system === "us" ? 1 : 2)}
              {chosen ? (
                <span>{ringedOfFlooded(chosen.bands[band])}</span>
              ) : (
                flooded && <span>{floodWords(flooded[band])}</span>
              )}
            </li>
          ))}
        </ul>
      ) : (
        <div class="stage-ticks" aria-hidden="true">
          {[least, most].map((level) => (
            <span key={level} style={{ "--at": shareOf(level) }}>
              {level}
            </span>
          ))}
        </div>
      )}
    </div>
  );
}

/** Where the crests of the forecast's bands are on the slider, in the person's unit. */
function bandMarks(valueM: number, system: UnitSystem) {
  const bands = bandsNow.value;
  if (!bands) return [];
  const zeroM = waterElevationAtGauge(plan.value.water) - valueM;
  return (["low", "likely", "high"] as const).map((band) => ({
    band,
    at: lengthIn(bands[band] - zeroM, system),
  }));
}
