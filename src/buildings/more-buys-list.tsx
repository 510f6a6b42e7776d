import type { MoreBuys } from "../../shared/buildings/choice-types.ts";
import { BUILDINGS, buysWords, moreWords } from "../../shared/words/buildings-answer.ts";
import { moreIsCurrent } from "../live/buildings/choosing.ts";
import { unitSystem } from "../live/screen.ts";

/** What more would let be ringed besides, line by line. */
export function MoreBuysList({ buys }: { readonly buys: readonly MoreBuys[] }) {
  const system = unitSystem.value;
  return (
    <section class="county-pane county-more" data-stale={!moreIsCurrent.value}>
      <h3>{BUILDINGS.more}</h3>
      <dl>
        {buys.map((each) => (
          <div key={moreWords(each, system)} data-nothing={each.buildings <= 0 && each.mustDo <= 0}>
            <dt>{moreWords(each, system)}</dt>
            <dd>{buysWords(each)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
