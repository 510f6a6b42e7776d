import type { ComponentChildren } from "preact";
import { bagOrder } from "../../shared/bag-order.ts";
import { isCounted } from "../../shared/completeness.ts";
import type { Exported } from "../../shared/exports/exported.ts";
import type { Plan } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import {
  formatArea,
  formatCount,
  formatLength,
  formatMass,
  formatShare,
  formatSmallMass,
  formatSmallVolume,
  formatStation,
  formatVolume,
  type UnitSystem,
} from "../../shared/units.ts";
import { bagOrderParts } from "../../shared/words/bag-order.ts";
import {
  orderChances,
  orderFigureWords,
  overLimitWords,
  surveyFirstList,
} from "../../shared/words/ground-chances.ts";
import { type MaterialKey, takenMaterials } from "../../shared/words/materials.ts";
import { SETTLING_NOTE } from "../../shared/words/settling.ts";
import { rollsWords, rollWords } from "../../shared/words/takes.ts";
import { doneAfter } from "../../shared/words/time.ts";
import { unitsOf } from "../../shared/words/units.ts";
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
  const { practice, section } = plan;
  const { bag, sheet } = section;
  const units = unitsOf(system);
  const nine = orderChances(line).find(({ key }) => key === "nine");
  return (
    <table class="sheet-table orders">
      <tbody>
        <Order name="Bags" amount={`order ${formatCount(order.total)}`}>
          {bagOrderParts(order)}; {formatSmallVolume(bag.placedVolumeM3, system)} as placed,{" "}
          {formatSmallMass(bag.filledMassKg, system)} filled, {formatShare(practice.spareShare)}{" "}
          spare. {SETTLING_NOTE}
        </Order>
        <Order name="Sand" amount={formatVolume(totals.sandM3, system)}>
          {formatMass(totals.sandDryKg, system)} dry, {formatMass(totals.sandWetKg, system)} wet,{" "}
          {formatShare(practice.wasteShare)} lost; {formatCount(totals.trucks)} truckloads of{" "}
          {formatVolume(practice.truckM3, system)}
        </Order>
        <Order
          name={`Poly sheeting, ${system === "us" ? "6 mil" : "0.15 mm"} or more`}
          amount={rollsWords(totals.sheetRolls)}
        >
          {rollWords(plan, system)} each, {formatArea(totals.sheetM2, system)} laid, lap{" "}
          {units.figure(sheet.lapM)}, upstream over downstream
        </Order>
        {takenMaterials(totals.materials, system).map(({ key, name, amount }) => (
          <Order key={key} name={name} amount={amount}>
            {reachesTaking(line, key, system)}
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
          {formatLength(totals.builtLengthM, system, 0)} built of{" "}
          {formatLength(totals.lengthM, system, 0)}, greatest height{" "}
          {formatLength(totals.greatestHeightM, system)},{" "}
          {formatLength(totals.lengthOverLimitM, system, 0)} over {limitWords(plan, line, system)}
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
            {count.why}
            {count.beyondM > 0.5 &&
              ` ${formatLength(count.beyondM, system, 0)} are higher than it goes and not counted.`}
          </Order>
        ))}
      </tbody>
    </table>
  );
}

/** Where a material goes: which reaches take it, as what, and how much where there are several. */
function reachesTaking(line: SizedLine, key: MaterialKey, system: UnitSystem): string {
  const taking = line.reaches.filter(({ totals }) => totals.materials[key] > 0);
  return taking
    .map(({ fromM, toM, sectionName, totals }) => {
      const where = `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
      const own = takenMaterials(totals.materials, system).find((each) => each.key === key);
      const share = taking.length > 1 ? `, ${own?.amount}` : "";
      return `${where}, ${sectionName.toLowerCase()}${share}`;
    })
    .join("; ");
}

function limitWords({ practice }: Plan, line: SizedLine, system: UnitSystem): string {
  const isOne = line.reaches.every(({ limitM }) => limitM === practice.limitM);
  return isOne
    ? `the height limit of ${formatLength(practice.limitM, system)}`
    : "the height limit of its levee type";
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
