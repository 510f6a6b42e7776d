import { formatStation } from "../../../shared/units.ts";
import {
  orderChances,
  overLimitWords,
  surveyFirstWords,
  triedWords,
} from "../../../shared/words/ground-chances.ts";
import type { MakeupInputs } from "../../../shared/words/makeup/inputs.ts";
import { markedM } from "../../live/screen.ts";
import { Amount } from "./amount.tsx";

/** What the order may come to where the ground is not as the elevation data has it, and where to level it first. */
export function GroundChances({ inputs }: { readonly inputs: MakeupInputs }) {
  const { line, system } = inputs;
  const { simulatedGround } = line;
  if (!simulatedGround) {
    const state = simulatedGround === null ? "not known" : "counting";
    return <p class="hint">Order by how sure the ground is: {state}.</p>;
  }
  const over = overLimitWords(line);
  return (
    <section class="ground-chances" aria-label="Order by how sure the ground is">
      <dl class="amounts">
        {orderChances(line).map(({ key, name, amount }) => (
          <div key={key} class="amount" data-chance={key}>
            <dt>{name}</dt>
            <dd>
              <Amount make="groundSpread" title={name} inputs={inputs}>
                {amount}
              </Amount>
            </dd>
          </div>
        ))}
      </dl>
      {over && <p class="hint">{over}</p>}
      {simulatedGround.surveyFirst.length > 0 && (
        <>
          <p>Survey the ground here first</p>
          <ol class="survey-first">
            {simulatedGround.surveyFirst.map((first) => (
              <li key={first.chainageM}>
                <button
                  type="button"
                  class="text-button"
                  onClick={() => {
                    markedM.value = first.chainageM;
                  }}
                >
                  {formatStation(first.chainageM, system)}
                </button>{" "}
                {surveyFirstWords(first)}
              </li>
            ))}
          </ol>
        </>
      )}
      <p class="hint">{triedWords(simulatedGround, system)}</p>
    </section>
  );
}
