import { lowPlaceOf } from "../../shared/field/at-stake.ts";
import { formatStation, lengthUnit } from "../../shared/units.ts";
import {
  cautionsAtStakeWords,
  fieldFacts,
  heightInStepsWords,
  lineCommaWords,
  lowPlaceWords,
  NO_WARNING,
  noHeightWords,
  stakeCountWords,
} from "../../shared/words/field.ts";
import { heightUpFigure } from "../../shared/words/height-up.ts";
import { isWide } from "../browser/wide.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { type AtStake, checksHere } from "./at.ts";
import { BuiltRows, PlanningRow } from "./built-rows.tsx";
import { DoneKey } from "./done-key.tsx";
import { LineStrip } from "./line-strip.tsx";
import { MustFixBox } from "./must-fix-box.tsx";
import { PlaceLine } from "./place-line.tsx";
import { Read } from "./read.tsx";
import { StakeKeys } from "./stake-keys.tsx";
import { useCrossSection } from "./use-cross-section.ts";

/** What a crew builds at one stake, in figures read at arm's length. */
export function BuildView({ at }: { readonly at: AtStake }) {
  if (!isWide.value) {
    return (
      <div class="crew-build">
        <Read label="Stake">
          <Head at={at} />
          <MustFixBox />
          <Height at={at} />
          <Facts at={at} />
          <Cautions />
          <BuiltRows at={at} />
          <PlaceLine at={at} />
          <PlanningRow />
        </Read>
        <LineStrip at={at} />
        <StakeKeys at={at}>
          <DoneKey at={at} />
        </StakeKeys>
      </div>
    );
  }
  return (
    <div class="crew-build-wide">
      <div>
        <Read label="Stake">
          <Head at={at} />
          <Height at={at} />
        </Read>
        <StakeKeys at={at}>
          <DoneKey at={at} />
        </StakeKeys>
      </div>
      <div>
        <Read label="Stake">
          <MustFixBox />
          <Facts at={at} />
          <Cautions />
          <BuiltRows at={at} />
          <PlaceLine at={at} />
          <PlanningRow />
        </Read>
        <LineStrip at={at} />
      </div>
    </div>
  );
}

function Head({ at: { line, station, staked, index } }: { readonly at: AtStake }) {
  return (
    <header class="crew-head">
      <h2 class="crew-station">{formatStation(station.chainageM, unitSystem.value)}</h2>
      <p>
        {lineCommaWords(plan.value, line)}
        <strong>{stakeCountWords(index, staked.stakes.length)}</strong>
      </p>
    </header>
  );
}

function Height({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const cross = useCrossSection(at, 0);
  const { greatestHeightM } = at.station;
  const none = noHeightWords(at.line, at.station);
  if (none !== null || greatestHeightM === null) return <p class="crew-no-height">{none}</p>;
  const low = cross && lowPlaceOf(cross);
  return (
    <div class="crew-height">
      <p class="crew-height-figure">
        {heightUpFigure(greatestHeightM, system)}
        <span>{lengthUnit(system)}</span>
      </p>
      <p class="crew-height-words">
        <span>Levee height</span>
        <strong>{heightInStepsWords(greatestHeightM, system)}</strong>
        {low && lowPlaceWords(low)}
      </p>
    </div>
  );
}

function Facts({ at }: { readonly at: AtStake }) {
  return (
    <dl class="crew-facts">
      {fieldFacts({ ...at, plan: plan.value, system: unitSystem.value }).map(
        ({ name, value, notes }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <strong>{value}</strong>
              {notes.map((note) => (
                <span key={note}>{note}</span>
              ))}
            </dd>
          </div>
        ),
      )}
    </dl>
  );
}

function Cautions() {
  const checks = checksHere.value;
  if (!checks) return null;
  const words = cautionsAtStakeWords(checks.cautions, unitSystem.value);
  const isClear = words.length === 0 && checks.mustFix.length === 0 && !checks.isOverLimit;
  if (isClear) return <p class="crew-cautions">{NO_WARNING}</p>;
  return words.length === 0 ? null : (
    <section class="crew-cautions" aria-label="Cautions">
      {words.map((each) => (
        <p key={each}>{each}</p>
      ))}
    </section>
  );
}
