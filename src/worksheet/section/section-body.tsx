import { SETTINGS } from "../../../shared/settings.ts";
import { changedFiguresWords } from "../../../shared/words/levee-types.ts";
import { edit } from "../../document/edits/alternatives.ts";
import {
  isOwnFigure,
  isStandard,
  SECTION_GROUPS,
  type SettingLine,
  withSetting,
} from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { SettingRow } from "../setting-row.tsx";

/** Every figure of levee type and bags, with its default and its source. */
export function SectionBody() {
  const changed = SECTION_GROUPS.flatMap((group) => group.lines).filter(
    ({ path }) => !isOwnFigure(path) && !isStandard(plan.value, path),
  );
  return (
    <>
      {changed.length > 0 && <p class="hint">{changedFiguresWords(changed.length)}.</p>}
      {SECTION_GROUPS.map((group) => (
        <section key={group.title} aria-label={group.title}>
          <h3>{group.title}</h3>
          {group.lines.map((line) => (
            <SettingRow key={line.path} {...line} />
          ))}
        </section>
      ))}
      {changed.length > 0 && (
        <button type="button" class="text-button" onClick={() => resetAll(changed)}>
          Set all {changed.length} back to their defaults
        </button>
      )}
    </>
  );
}

function resetAll(lines: readonly SettingLine[]): void {
  edit({
    note: "Set levee type and bags back to their defaults",
    change: (now) =>
      lines.reduce((next, { path }) => withSetting(next, path, SETTINGS[path].defaultSI), now),
  });
}
