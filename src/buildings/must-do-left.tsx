import type { FoundChoice } from "../../shared/buildings/choice-types.ts";
import { BUILDINGS, mustDoWords, needsWords } from "../../shared/words/buildings-answer.ts";
import { SeverityMark, severityWord } from "../drawing/severity-mark.tsx";
import { listed } from "../live/buildings/listed.ts";
import { unitSystem } from "../live/screen.ts";

/** Buildings that must be ringed and are not, with why and what it needs; nothing when all are. */
export function MustDoLeft({ choice }: { readonly choice: FoundChoice }) {
  if (choice.mustDoLeft.length === 0) return null;
  const names = new Map(listed.value?.buildings.map(({ id, name }) => [id, name]));
  return (
    <div class="county-must-fix" role="alert">
      <p>
        <SeverityMark severity="stop" /> <b>{severityWord("stop")}</b>
      </p>
      {choice.mustDoWhy.map(({ id, why }) => (
        <p key={id}>{mustDoWords(names.get(id) ?? id, why)}</p>
      ))}
      {choice.mustDoNeeds && <p>{needsWords(choice.mustDoNeeds, unitSystem.value)}</p>}
      <p>{BUILDINGS.mustDoRemedy}</p>
    </div>
  );
}
