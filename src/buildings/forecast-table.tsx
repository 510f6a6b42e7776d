import type { BandChoices } from "../../shared/buildings/level-choices.ts";
import { BANDS } from "../../shared/buildings/level-choices.ts";
import { BAND_NAMES } from "../../shared/words/buildings-answer.ts";
import { FORECASTS, forecastRows, sameWords } from "../../shared/words/buildings-forecasts.ts";
import { plan } from "../document/store.ts";
import { listed } from "../live/buildings/listed.ts";
import { unitSystem } from "../live/screen.ts";

/** What is chosen for the low, the likely and the high forecast, side by side, and what is the same in all three. */
export function ForecastTable({ choices }: { readonly choices: BandChoices }) {
  const names = new Map(listed.value?.buildings.map(({ id, name }) => [id, name]));
  const same = choices.same.buildings.map((id) => names.get(id) ?? id);
  return (
    <section class="county-pane county-forecasts" aria-label={FORECASTS.title}>
      <table>
        <thead>
          <tr>
            <th scope="col">{FORECASTS.title}</th>
            {BANDS.map((band) => (
              <th key={band} scope="col">
                {BAND_NAMES[band]}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {forecastRows(choices, plan.value, unitSystem.value).map(({ head, cells }) => (
            <tr key={head}>
              <th scope="row">{head}</th>
              {BANDS.map((band) => (
                <td key={band}>{cells[band]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        <b>{FORECASTS.same}:</b> {sameWords(choices, same)}
      </p>
      <p class="hint">{FORECASTS.note}</p>
    </section>
  );
}
