import { timeOf } from "../../../shared/defaults.ts";
import { missingCrew } from "../../../shared/time/crew-inputs.ts";
import { workHoursWords } from "../../../shared/words/work-hours.ts";
import { edit } from "../../document/edits/alternatives.ts";
import { withTime } from "../../document/edits/forecast.ts";
import type { SettingLine } from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { SettingRow } from "../setting-row.tsx";
import { StartField } from "./time-start-field.tsx";

const PEOPLE: readonly SettingLine[] = [
  { path: "practice.people", label: "People at work" },
  { path: "time.fillShare", label: "Of them filling" },
  { path: "time.crews", label: "Crews, each with its part" },
  { path: "time.setUpH", label: "Setting up first" },
  { path: "time.shifts", label: "Shifts in 24 hours" },
  { path: "time.shiftH", label: "Length of a shift" },
];
const DAYLIGHT = [
  { path: "time.dayFromH", label: "No work before", blank: "sunrise", noDefault: true },
  { path: "time.dayToH", label: "No work after", blank: "sunset", noDefault: true },
] as const;
const WAY: readonly SettingLine[] = [
  { path: "time.marginM", label: "Top of levee above the water, at least" },
  { path: "time.liftM", label: "Height of a lift" },
];

/** Who works when. */
export function WorkPart() {
  const { lit } = timeOf(plan.value);
  const rows = [...PEOPLE, ...(lit ? [] : DAYLIGHT), ...WAY];
  return (
    <Disclosure
      id="time-work"
      title="People and hours"
      level="part"
      startsOpen={missingCrew(plan.value).length > 0}
      summary={workHoursWords(plan.value, unitSystem.value)}
    >
      <StartField />
      {rows.map((row) => (
        <SettingRow key={row.path} {...row} />
      ))}
      <label class="check-line">
        <input type="checkbox" checked={lit} onChange={() => setLit(!lit)} />
        Work at night too, under lights
      </label>
    </Disclosure>
  );
}

function setLit(lit: boolean): void {
  edit({
    note: lit ? "Work at night too" : "Work by day",
    change: (now) => withTime(now, { lit }),
  });
}
