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
import type { MakeupKey } from "../../../shared/words/makeup/line.ts";
import { takenMaterials } from "../../../shared/words/materials.ts";
import { rollWords } from "../../../shared/words/takes.ts";
import { Amount } from "./amount.tsx";

/** Everything that is ordered or organised beside the bags, each with its make-up. */
export function Amounts({ inputs }: { inputs: MakeupInputs }) {
  const { plan, totals, system } = inputs;
  const { practice } = plan;
  const amount = (make: MakeupKey, title: string, text: string) => (
    <Amount make={make} title={title} inputs={inputs}>
      {text}
    </Amount>
  );
  const volume = (m3: number) => formatVolume(m3, system);
  const length = (m: number) => formatLength(m, system, 0);
  const taskHours = `${formatHours(totals.taskPersonHoursLow)} to ${formatHours(totals.taskPersonHoursHigh)}`;
  return (
    <dl class="amounts">
      <Row name={`Sand, with ${formatShare(practice.wasteShare)} wasted`}>
        {amount("sandM3", "Sand to order", volume(totals.sandM3))}
      </Row>
      <Row name="dry, wet">
        {amount("sandDryKg", "Weight of the sand, dry", formatMass(totals.sandDryKg, system))}
        {" · "}
        {amount("sandWetKg", "Weight of the sand, wet", formatMass(totals.sandWetKg, system))}
      </Row>
      <Row name={`Truckloads of ${volume(practice.truckM3)}`}>
        {amount("trucks", "Truckloads of sand", formatCount(totals.trucks))}
      </Row>
      <Row name={`Poly sheeting, rolls of ${rollWords(plan, system)}`}>
        {amount("sheetRolls", "Rolls of poly sheeting", formatCount(totals.sheetRolls))}
        {" · "}
        {amount("sheetM2", "Poly sheeting laid", formatArea(totals.sheetM2, system))}
      </Row>
      <Row name="Bags to order, poly sheeting included">
        {amount("bagOrder", "Bags to order", `order ${formatCount(bagOrder(totals).total)}`)}
        {" · "}
        {amount("sheetBags", "Bags on the poly sheeting", formatCount(totals.sheetBags))}
      </Row>
      {takenMaterials(totals.materials, system).map(({ key, name, amount: taken }) => (
        <Row key={key} name={name}>
          {amount(key, name, taken)}
          {key === "plywoodSheets" && <> · {formatArea(totals.materials.plywoodM2, system)}</>}
        </Row>
      ))}
      <Row name="Whole job, person-hours">
        {amount(
          "jobPersonHours",
          "Person-hours for the whole job",
          formatHours(totals.jobPersonHours),
        )}
      </Row>
      <Row name="Filling or placing alone, person-hours">
        {amount("taskPersonHours", "Person-hours for one task", taskHours)}
      </Row>
      <Row name="Levee, average end areas">
        {amount("volumeM3", "Volume by average end areas", volume(totals.volumeM3))}
      </Row>
      <Row name="by the prismoidal rule">
        {amount(
          "prismoidalVolumeM3",
          "Volume by the prismoidal rule",
          volume(totals.prismoidalVolumeM3),
        )}
      </Row>
      <Row name="Greatest height">
        {amount("greatestHeightM", "Greatest height", formatLength(totals.greatestHeightM, system))}
      </Row>
      <Row name="Length over the height limit">
        {amount(
          "lengthOverLimitM",
          "Length over the height limit",
          length(totals.lengthOverLimitM),
        )}
      </Row>
      <Row name="Built, of the whole length">
        {amount("builtLengthM", "Built length", length(totals.builtLengthM))}
        {" of "}
        {amount("lengthM", "Length", length(totals.lengthM))}
      </Row>
      {totals.lengthNoDataM > 0 && (
        <Row name="No elevation data, not counted">
          {amount("lengthNoDataM", "Length without elevation data", length(totals.lengthNoDataM))}
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
