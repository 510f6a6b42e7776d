import { documentsIn } from "../../shared/handbook.ts";
import type { Check } from "../../shared/sizing-types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { CAUTIONS, DISCLAIMER, PATROL, watchSigns } from "../../shared/words/cautions.ts";
import { sortedChecks } from "../../shared/words/check-list.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { NOT_TRACED } from "../../shared/words/line-state.ts";
import { SEVERITY_NAMES } from "../../shared/words/severity.ts";
import { SeverityMark } from "../drawing/severity-mark.tsx";
import type { Piece } from "./sheet.tsx";

/**
 * Every finding with what to do, the cautions for every line, and what the sources' keys mean.
 * @param overtops above which level the line overtops, in words; null when the water was not traced
 */
export function checkPieces(
  found: readonly Check[],
  overtops: string | null,
  system: UnitSystem,
): readonly Piece[] {
  const checks = sortedChecks(found).map((check) => ({
    ...check,
    ...checkWords(check, system),
  }));
  const sources = [...checks, ...CAUTIONS, ...watchSigns(system), ...PATROL].map(
    (each) => each.source,
  );
  const documents = [...new Set(documentsIn(sources.join(", ")))].sort();
  return [
    <>
      <h2>Checks</h2>
      <p>{overtops ? `This line ${overtops}.` : NOT_TRACED}</p>
      {checks.length === 0 && (
        <p>
          The checks found nothing on this line. They see only what the elevation data and the plan
          show.
        </p>
      )}
    </>,
    {
      rows: checks.map((check, index) => (
        <li key={`${check.id} ${check.fromM} ${index}`}>
          <SeverityMark severity={check.severity} />
          <div>
            <strong>
              {SEVERITY_NAMES[check.severity]}: {check.message}
            </strong>{" "}
            {check.remedy}{" "}
            <small>
              {check.rule} {check.source}
            </small>
          </div>
        </li>
      )),
      around: (rows) => (
        <ul class="sheet-checks" data-rows>
          {rows}
        </ul>
      ),
    },
    <>
      <h2>Always</h2>
      <ul class="sheet-caution-list">
        {CAUTIONS.map((caution) => (
          <li key={caution.text}>
            {caution.text} <small>{caution.source}</small>
          </li>
        ))}
      </ul>
      <p class="sheet-disclaimer">{DISCLAIMER}</p>
    </>,
    {
      rows: documents.map((document) => <li key={document}>{document}</li>),
      around: (rows) => (
        <section aria-label="Sources">
          <h2>Sources</h2>
          <ul class="sheet-sources" data-rows>
            {rows}
          </ul>
        </section>
      ),
    },
  ];
}
