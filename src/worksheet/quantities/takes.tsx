import type { SizedLine } from "../../../shared/sizing-types.ts";
import { plugsWords } from "../../../shared/words/pipes.ts";
import { type TakesKey, takesWords } from "../../../shared/words/takes.ts";
import { plan } from "../../document/store.ts";
import { holdingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { checksOf } from "../../live/water-now.ts";
import { Amount } from "./amount.tsx";

const TITLES: Readonly<Partial<Record<TakesKey, string>>> = {
  sandM3: "Sand to order",
  sheetRolls: "Rolls of poly sheeting",
};

/** What else is ordered, in as few lines as it takes. */
export function Takes({ line }: { line: SizedLine }) {
  const system = unitSystem.value;
  const inputs = { plan: plan.value, line, totals: line.totals, system };
  const rows = takesWords(
    { plan: plan.value, line, holding: holdingNow.value?.holding ?? null },
    system,
  );
  const plugs = plugsWords(plan.value, checksOf(line), system);
  return (
    <dl class="amounts takes">
      {rows.map(({ key, name, amount }) => (
        <div key={key} class="amount" data-amount={key}>
          <dt>{name}</dt>
          <dd>
            {key === "time" || key === "pumps" ? (
              amount
            ) : (
              <Amount make={key} title={TITLES[key] ?? name} inputs={inputs}>
                {amount}
              </Amount>
            )}
          </dd>
        </div>
      ))}
      {plugs && (
        <div class="amount" data-amount="plugs">
          <dt>Plugs</dt>
          <dd>{plugs}</dd>
        </div>
      )}
    </dl>
  );
}
