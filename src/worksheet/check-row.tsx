import type { Check } from "../../shared/sizing-types.ts";
import { formatStation, type UnitSystem } from "../../shared/units.ts";
import { markedM, pointedCheck, unitSystem } from "../state.ts";
import { SeverityMark } from "../ui/severity-mark.tsx";

/** "4+62 to 4+98", or nothing for a check that speaks of the whole plan. */
export function stretchWords(check: Check, system: UnitSystem): string {
  if (check.fromM === 0 && check.toM === 0) return "";
  const from = formatStation(check.fromM, system);
  const to = formatStation(check.toM, system);
  return from === to ? from : `${from} to ${to}`;
}

/** One finding: how grave, where, what, what to do, and by which rule. Pressed, it is shown on the map. */
export function CheckRow({ check }: { check: Check }) {
  const stretch = stretchWords(check, unitSystem.value);
  const pointed = pointedCheck.value;
  const isPointed =
    pointed !== null &&
    pointed.fromM === check.fromM &&
    pointed.toM === check.toM &&
    pointed.at === check.at;
  return (
    <li class="check" data-check={check.id} data-severity={check.severity}>
      <SeverityMark severity={check.severity} />
      <button
        type="button"
        class="check-face"
        aria-pressed={isPointed}
        onClick={() => point(isPointed ? null : check)}
      >
        <strong>
          {stretch && `${stretch}: `}
          {stretch ? lowerFirst(check.message) : check.message}
        </strong>
        <span>{check.remedy}</span>
        <small>
          {check.rule} · {check.source}
        </small>
      </button>
    </li>
  );
}

function point(check: Check | null): void {
  pointedCheck.value = check && { fromM: check.fromM, toM: check.toM, at: check.at };
  if (check && (check.fromM !== 0 || check.toM !== 0)) {
    markedM.value = (check.fromM + check.toM) / 2;
  }
}

function lowerFirst(text: string): string {
  const second = text.charAt(1);
  const isAbbreviation = second !== "" && second === second.toUpperCase() && /\p{L}/u.test(second);
  return isAbbreviation ? text : text.charAt(0).toLowerCase() + text.slice(1);
}
