import { CAUTIONS, DISCLAIMER } from "../../shared/words/cautions.ts";

/** The cautions for every line, short, at the end of the checks. */
export function Cautions() {
  return (
    <section class="cautions" aria-label="Cautions for every line">
      <h3>Always</h3>
      <ul>
        {CAUTIONS.map((caution) => (
          <li key={caution.text}>
            {caution.text} <small>{caution.source}</small>
          </li>
        ))}
      </ul>
      <p>{DISCLAIMER}</p>
    </section>
  );
}
