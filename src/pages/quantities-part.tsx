import type { ComponentChildren } from "preact";
import { bagOrder } from "../../shared/bag-order.ts";
import { isCounted } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import { formatCount, formatVolume } from "../../shared/units.ts";
import {
  orderChances,
  orderFigureWords,
  overLimitWords,
  surveyFirstList,
} from "../../shared/words/ground-chances.ts";
import { takenMaterials } from "../../shared/words/materials.ts";
import { orderBasis, reachesTakingWords } from "../../shared/words/order-sheet.ts";
import { beyondTableWords } from "../../shared/words/published.ts";
import { rollsWords } from "../../shared/words/takes.ts";
import { doneAfter } from "../../shared/words/time.ts";
import { LevelNotice } from "../drawing/level-notice.tsx";

/** For the office: all that the line takes, with what the figures rest on; no figure where the counts are no answer. */
export function QuantitiesPart({ of }: { readonly of: Exported }) {
  return (
    <section aria-label="Quantities">
      <h2>Quantities</h2>
      <LevelNotice doubt={of.line.levelDoubt} system={of.system} />
      {isCounted(of.line) ? (
        <Amounts of={of} />
      ) : (
        <p>Bags, sand and poly sheeting: not known. Order nothing by this page.</p>
      )}
    </section>
  );
}

function Amounts({ of: { plan, line, system } }: { readonly of: Exported }) {
  const { totals } = line;
  const order = bagOrder(totals);
  const { practice } = plan;
  const basis = orderBasis(plan, line, system);
  const nine = orderChances(line).find(({ key }) => key === "nine");
  return (
    <table class="sheet-table orders">
      <tbody>
        <Order name="Bags" amount={`order ${formatCount(order.total)}`}>
          {basis.bags}
        </Order>
        <Order name="Sand" amount={formatVolume(totals.sandM3, system)}>
          {basis.sand}
        </Order>
        <Order
          name={`Poly sheeting, ${system === "us" ? "6 mil" : "0.15 mm"} or more`}
          amount={rollsWords(totals.sheetRolls)}
        >
          {basis.sheeting}
        </Order>
        {takenMaterials(totals.materials, system).map(({ key, name, amount }) => (
          <Order key={key} name={name} amount={amount}>
            {reachesTakingWords(line, key, system)}
          </Order>
        ))}
        <Order
          name="People"
          amount={practice.people === null ? "not entered" : formatCount(practice.people)}
        >
          {line.time ? `${doneAfter(line.time)}; ` : ""}
          {formatCount(Math.round(totals.jobPersonHours))} person-hours for the whole job
        </Order>
        <Order name="Levee" amount={formatVolume(totals.volumeM3, system)}>
          {basis.levee}
        </Order>
        {nine && (
          <Order name={nine.name} amount={`order ${nine.amount}`}>
            {[orderFigureWords(line, system), overLimitWords(line), surveyFirstList(line, system)]
              .filter(Boolean)
              .join(" ")}
          </Order>
        )}
        {line.published.map((count) => (
          <Order
            key={count.key}
            name={`${count.name} (${count.key})`}
            amount={count.bags === null ? "–" : `${formatCount(count.bags)} bags`}
          >
            {[count.why, beyondTableWords(count, system)].filter(Boolean).join(" ")}
          </Order>
        ))}
      </tbody>
    </table>
  );
}

interface OrderProps {
  readonly name: string;
  readonly amount: string;
  readonly children: ComponentChildren;
}

function Order({ name, amount, children }: OrderProps) {
  return (
    <tr>
      <th scope="row">{name}</th>
      <td class="order-amount">{amount}</td>
      <td class="order-note">{children}</td>
    </tr>
  );
}
