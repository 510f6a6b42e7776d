import type { Exported } from "../../shared/exports/exported.ts";
import { momentOf } from "../../shared/time/forecast-time.ts";
import { lengthUnit } from "../../shared/units.ts";
import { momentWords } from "../../shared/words/clock.ts";
import { leaveLevelWords } from "../../shared/words/leave.ts";
import { mostSettlingFigure } from "../../shared/words/settling.ts";
import { levelWords } from "../../shared/words/time.ts";
import { lineTitle, sizedForWords, topRangeWords } from "../../shared/words/title.ts";
import { Fact } from "../ui/fact.tsx";
import { Mark } from "../ui/icons.tsx";
import { LineBand } from "./line-band.tsx";
import { printedNow } from "./paper.ts";

interface TitleBlockProps {
  readonly of: Exported;
  /** `Sheet 2 of 5: Stakes`. */
  readonly sheet: string;
}

/** On top of every page: what it is of, the water and top of levee, what elevations count from, what must be fixed. */
export function TitleBlock({ of, sheet }: TitleBlockProps) {
  const { plan, line, verticalDatum, system } = of;
  const unit = lengthUnit(system);
  const settling = mostSettlingFigure(line, 0, line.totals.lengthM, system);
  const crest = line.time?.crests.find(({ band }) => band === "likely");
  return (
    <header class="title-block">
      <div class="title-row">
        <Mark />
        <p>
          <strong>{plan.title}</strong>
          <br />
          {lineTitle(plan, line)}
        </p>
        <p class="title-sheet">
          <strong>{sheet}</strong>
          <br />
          Printed {printedNow(system)}
        </p>
      </div>
      <dl class="facts">
        <Fact name="Sized for">{sizedForWords(plan, system)}</Fact>
        <Fact name="Forecast crest">
          {crest
            ? `${levelWords(plan, crest.waterM, system)}, ${momentWords(momentOf(crest.at)!, true, system)}`
            : "no forecast entered"}
        </Fact>
        <Fact name="Top of levee">
          <strong>{topRangeWords(line, system)}</strong>
        </Fact>
        <Fact name="Leave">
          <strong>
            {plan.leave ? leaveLevelWords(plan.leave, system, true) : "stage not set"}
          </strong>
        </Fact>
        <Fact name="Lay bags higher by">
          {settling === null ? "no bags" : `5 %, up to ${settling} ${unit}: wet bags settle`}
        </Fact>
        <Fact name="Elevations">
          in {unit}, {verticalDatum}
        </Fact>
      </dl>
      <LineBand of={of} />
    </header>
  );
}
