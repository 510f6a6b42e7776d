import type { FoundChoice } from "../../shared/buildings/choice-types.ts";
import {
  hasStock,
  hoursThereAre,
  STOCK_SETTINGS,
  type StockFigure,
} from "../../shared/buildings/stock-settings.ts";
import {
  BUILDINGS,
  neededPeople,
  planPeopleWords,
  runsOutWords,
  untilWords,
  usedBags,
  usedHours,
  usedSand,
} from "../../shared/words/buildings-answer.ts";
import { sweepWhole } from "../live/buildings/checking.ts";
import { choiceShown } from "../live/buildings/choosing.ts";
import { workersNow } from "../live/buildings/crew.ts";
import { listed } from "../live/buildings/listed.ts";
import { setByOwnWater, setStock, stock } from "../live/buildings/stock.ts";
import { firstWaterWords, untilWaterH, workStart } from "../live/buildings/times.ts";
import { unitSystem } from "../live/screen.ts";
import { Disclosure } from "../ui/disclosure.tsx";
import { NumberField } from "../ui/number-field.tsx";
import { quantityOf } from "../ui/quantity.ts";

/** What there is to build with, how much of it the choice takes, and what runs out first. */
export function StockFields() {
  const shown = choiceShown.value;
  const choice = shown?.choice ?? null;
  const { bags, sandM3, people } = stock.value;
  const system = unitSystem.value;
  const force = shown?.of.workForce ?? null;
  const workers = workersNow.value;
  const hours = force && hoursThereAre(force);
  return (
    <section class="county-pane county-stock">
      <div class="county-pane-head">
        <h3>{BUILDINGS.stock}</h3>
        {choice && <strong>{runsOutWords(choice.runsOutFirst)}</strong>}
      </div>
      <StockField
        figure="bags"
        label={BUILDINGS.bags}
        share={choice && shareOf(choice.bags, bags)}
        isShort={choice?.runsOutFirst === "bags"}
      >
        {choice && bags !== null ? usedBags(choice.bags, bags) : null}
      </StockField>
      <StockField
        figure="sandM3"
        label={BUILDINGS.sand}
        share={choice && shareOf(choice.sandM3, sandM3)}
        isShort={choice?.runsOutFirst === "sand"}
      >
        {choice && sandM3 !== null ? usedSand(choice.sandM3, sandM3, system) : null}
      </StockField>
      <StockField
        figure="people"
        label={BUILDINGS.peopleLabel}
        share={
          choice && workers ? peopleShare(choice, hours?.available ?? null, workers.people) : null
        }
        isShort={choice?.runsOutFirst === "people" || choice?.runsOutFirst === "time"}
      >
        {choice && hours
          ? usedHours(choice.personHours, hours)
          : choice && workers
            ? neededPeople(choice)
            : people === null && workers
              ? planPeopleWords(workers.people)
              : null}
      </StockField>
      <StockField figure="untilWaterH" label={BUILDINGS.time} share={null} isShort={false}>
        {untilWords(firstWaterWords(system))}
      </StockField>
      <First />
      <Disclosure id="county-work" title={BUILDINGS.work} level="part">
        {(["atWorkShare", "setUpH", "closeBeforeH", "moveHours", "mostOnOneLine"] as const).map(
          (figure) => (
            <Figure key={figure} figure={figure} label={WORK_LABELS[figure]} />
          ),
        )}
        {workStart.value && (
          <label class="check-line">
            <input
              type="checkbox"
              checked={stock.value.byOwnWater}
              onChange={(event) => setByOwnWater(event.currentTarget.checked)}
            />
            {BUILDINGS.byOwnWater}
          </label>
        )}
      </Disclosure>
      {!hasStock(stock.value) && !sweepWhole.value && <p class="hint">{BUILDINGS.typeStock}</p>}
    </section>
  );
}

const WORK_LABELS = {
  atWorkShare: BUILDINGS.atWork,
  setUpH: BUILDINGS.setUp,
  closeBeforeH: BUILDINGS.closeBefore,
  moveHours: BUILDINGS.move,
  mostOnOneLine: BUILDINGS.mostOnOne,
} as const;

interface StockFieldProps {
  readonly figure: StockFigure;
  readonly label: string;
  /** Share that the choice takes; null where there is nothing to compare. */
  readonly share: number | null;
  readonly isShort: boolean;
  readonly children: string | null;
}

function StockField({ figure, label, share, isShort, children }: StockFieldProps) {
  return (
    <div class="county-stock-row" data-short={isShort}>
      <Figure figure={figure} label={label} />
      {share !== null && (
        <span class="county-used" aria-hidden="true">
          <span style={{ width: `${Math.min(1, share) * 100}%` }} />
        </span>
      )}
      {children && <small>{children}</small>}
    </div>
  );
}

function Figure({ figure, label }: { readonly figure: StockFigure; readonly label: string }) {
  const { lowSI, highSI, kind } = STOCK_SETTINGS[figure];
  const isTyped =
    figure === "bags" || figure === "sandM3" || figure === "people" || figure === "untilWaterH";
  const value = figure === "untilWaterH" ? untilWaterH.value : stock.value[figure];
  return (
    <NumberField
      label={label}
      value={value}
      quantity={quantityOf(STOCK_SETTINGS[figure])}
      range={{ least: lowSI, most: highSI, whole: kind === "count" }}
      system={unitSystem.value}
      blank={isTyped ? BUILDINGS.notTyped : undefined}
      onValue={(next) => {
        setStock(figure, next);
        return { ok: true, value: undefined };
      }}
    />
  );
}

/** Of the hours that there are for all; where each line has its own hour, of the people. */
function peopleShare(
  { personHours, peopleNeeded }: FoundChoice,
  available: number | null,
  people: number,
): number | null {
  if (available !== null) return shareOf(personHours, available);
  return peopleNeeded === null ? null : shareOf(peopleNeeded, people);
}

function shareOf(used: number, of: number | null): number | null {
  return of === null ? null : of > 0 ? used / of : 1;
}

/** Buildings that are ringed before all others. */
function First() {
  const names = (listed.value?.buildings ?? [])
    .filter(({ priority }) => priority === "first")
    .map(({ name }) => name);
  return (
    <p class="county-first">
      <span>{BUILDINGS.ringFirst}</span>
      <b>{names.length === 0 ? BUILDINGS.noneFirst : names.join(", ")}</b>
    </p>
  );
}
