import { DEFAULT_PRACTICE } from "../../shared/defaults.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { changeSetting } from "../document/edits/settings.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "./screen.ts";

/** Stakes stand at round stations of the units in use: metres between them when nothing else was chosen. */
const USUAL_INTERVAL_M: Readonly<Record<UnitSystem, number>> = {
  us: DEFAULT_PRACTICE.stationIntervalM,
  metric: 10,
};

/**
 * Shows feet or metres from now on. A station interval that is still the usual one of the other system becomes
 * the usual one of this, one step that can be undone; an interval someone typed stays.
 */
export function chooseUnits(system: UnitSystem): void {
  const other = system === "us" ? "metric" : "us";
  unitSystem.value = system;
  const { stationIntervalM } = plan.value.practice;
  if (Math.abs(stationIntervalM - USUAL_INTERVAL_M[other]) > 1e-6) return;
  changeSetting("practice.stationIntervalM", "Station interval", USUAL_INTERVAL_M[system]);
}
