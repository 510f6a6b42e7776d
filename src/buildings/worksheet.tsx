import "./worksheet.css";
import { BUILDINGS } from "../../shared/words/buildings-answer.ts";
import { lowBehindWords } from "../../shared/words/low-behind.ts";
import { SeverityMark } from "../drawing/severity-mark.tsx";
import { checkingNow } from "../live/buildings/checking.ts";
import { bandChoices, choiceShown, moreShown } from "../live/buildings/choosing.ts";
import { listed } from "../live/buildings/listed.ts";
import { lowBehindNow } from "../live/buildings/shown.ts";
import { Answer } from "./answer.tsx";
import { ColumnPicks } from "./column-picks.tsx";
import { ForecastTable } from "./forecast-table.tsx";
import { ImportFootprints } from "./import-footprints.tsx";
import { MoreBuysList } from "./more-buys-list.tsx";
import { StageField } from "./stage-field.tsx";
import { StockFields } from "./stock-fields.tsx";

/** Question and answer, what there is to build with, what more would buy, and the water that all is sized for. */
export function BuildingsWorksheet() {
  const isEmpty = listed.value === null;
  const isChecking = checkingNow.value?.phase === "checking";
  return (
    <div class="county-sheet">
      <div class="county-sheet-rest">
        {isEmpty ? (
          <ImportFootprints />
        ) : (
          <>
            <Answer />
            <StockFields />
            {choiceShown.value && moreShown.value && !isChecking && (
              <MoreBuysList buys={moreShown.value} />
            )}
          </>
        )}
        <StageField />
        {bandChoices.value && !isChecking && <ForecastTable choices={bandChoices.value} />}
        {!isEmpty && <ColumnPicks />}
      </div>
      <Foot hasAnswer={choiceShown.value !== null} />
    </div>
  );
}

function Foot({ hasAnswer }: { readonly hasAnswer: boolean }) {
  const low = lowBehindNow.value.length;
  return (
    <footer class="county-foot">
      {low > 0 && (
        <p class="county-caution">
          <SeverityMark severity="caution" />
          <span>{lowBehindWords(low)}</span>
        </p>
      )}
      {hasAnswer && (
        <p class="county-caution">
          <SeverityMark severity="caution" />
          <span>
            <b>{BUILDINGS.caution}</b> {BUILDINGS.fail}
          </span>
        </p>
      )}
      <p>
        {BUILDINGS.people} {BUILDINGS.engineers}
      </p>
    </footer>
  );
}
