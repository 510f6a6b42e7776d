import type { ComponentChildren } from "preact";
import { bagOrder } from "../../../shared/bag-order.ts";
import {
  formatArea,
  formatCount,
  formatHours,
  formatLength,
  formatMass,
  formatShare,
  formatVolume,
} from "../../../shared/units.ts";
import type { MakeupInputs } from "../../../shared/words/makeup/inputs.ts";
import { takenMaterials } from "../../../shared/words/materials.ts";
import { rollWords } from "../../../shared/words/takes.ts";
import { Amount } from "./amount.tsx";

/** Everything that is ordered or organised beside the bags, each with its make-up. */
export function Amounts({ inputs }: { inputs: MakeupInputs }) {
  const { plan, totals, system } = inputs;
  const { practice } = plan;
  const roll = rollWords(plan, system);
  return (
    <dl class="amounts">
      <Row name={`Sand, with ${formatShare(practice.wasteShare)} wasted`}>
        <Amount make="sandM3" title="Sand to order" inputs={inputs}>
          {formatVolume(totals.sandM3, system)}
        </Amount>
      </Row>
      <Row name="dry, wet">
        <Amount make="sandDryKg" title="Weight of the sand, dry" inputs={inputs}>
          {formatMass(totals.sandDryKg, system)}
        </Amount>
        {" · "}
        <Amount make="sandWetKg" title="Weight of the sand, wet" inputs={inputs}>
          {formatMass(totals.sandWetKg, system)}
        </Amount>
      </Row>
      <Row name={`Truckloads of ${formatVolume(practice.truckM3, system)}`}>
        <Amount make="trucks" title="Truckloads of sand" inputs={inputs}>
          {formatCount(totals.trucks)}
        </Amount>
      </Row>
      <Row name={`Poly sheeting, rolls of ${roll}`}>
        <Amount make="sheetRolls" title="Rolls of poly sheeting" inputs={inputs}>
          {formatCount(totals.sheetRolls)}
        </Amount>
        {" · "}
        <Amount make="sheetM2" title="Poly sheeting laid" inputs={inputs}>
          {formatArea(totals.sheetM2, system)}
        </Amount>
      </Row>
      <Row name="Bags to order, poly sheeting included">
        <Amount make="bagOrder" title="Bags to order" inputs={inputs}>
          order {formatCount(bagOrder(totals).total)}
        </Amount>
        {" · "}
        <Amount make="sheetBags" title="Bags on the poly sheeting" inputs={inputs}>
          {formatCount(totals.sheetBags)}
        </Amount>
      </Row>
      {takenMaterials(totals.materials, system).map(({ key, name, amount }) => (
        <Row key={key} name={name}>
          <Amount make={key} title={name} inputs={inputs}>
            {amount}
          </Amount>
          {key === "plywoodSheets" && <> · {formatArea(totals.materials.plywoodM2, system)}</>}
        </Row>
      ))}
      <Row name="Whole job, person-hours">
        <Amount make="jobPersonHours" title="Person-hours for the whole job" inputs={inputs}>
          {formatHours(totals.jobPersonHours)}
        </Amount>
      </Row>
      <Row name="Filling or placing alone, person-hours">
        <Amount make="taskPersonHours" title="Person-hours for one task" inputs={inputs}>
          {formatHours(totals.taskPersonHoursLow)} to {formatHours(totals.taskPersonHoursHigh)}
        </Amount>
      </Row>
      <Row name="Levee, average end areas">
        <Amount make="volumeM3" title="Volume by average end areas" inputs={inputs}>
          {formatVolume(totals.volumeM3, system)}
        </Amount>
      </Row>
      <Row name="by the prismoidal rule">
        <Amount make="prismoidalVolumeM3" title="Volume by the prismoidal rule" inputs={inputs}>
          {formatVolume(totals.prismoidalVolumeM3, system)}
        </Amount>
      </Row>
      <Row name="Greatest height">
        <Amount make="greatestHeightM" title="Greatest height" inputs={inputs}>
          {formatLength(totals.greatestHeightM, system)}
        </Amount>
      </Row>
      <Row name="Length over the height limit">
        <Amount make="lengthOverLimitM" title="Length over the height limit" inputs={inputs}>
          {formatLength(totals.lengthOverLimitM, system, 0)}
        </Amount>
      </Row>
      <Row name="Built, of the whole length">
        <Amount make="builtLengthM" title="Built length" inputs={inputs}>
          {formatLength(totals.builtLengthM, system, 0)}
        </Amount>
        {" of "}
        <Amount make="lengthM" title="Length" inputs={inputs}>
          {formatLength(totals.lengthM, system, 0)}
        </Amount>
      </Row>
      {totals.lengthNoDataM > 0 && (
        <Row name="No elevation data, not counted">
          <Amount make="lengthNoDataM" title="Length without elevation data" inputs={inputs}>
            {formatLength(totals.lengthNoDataM, system, 0)}
          </Amount>
        </Row>
      )}
    </dl>
  );
}

function Row({ name, children }: { name: string; children: ComponentChildren }) {
  return (
    <div class="amount">
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
