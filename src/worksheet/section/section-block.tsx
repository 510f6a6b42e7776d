import { SETTINGS } from "../../../shared/settings.ts";
import { formatLength } from "../../../shared/units.ts";
import { edit } from "../../document/edits/alternatives.ts";
import {
  isOwnFigure,
  isStandard,
  SECTION_GROUPS,
  type SettingLine,
  withSetting,
} from "../../document/edits/settings.ts";
import { plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { SettingRow } from "../setting-row.tsx";

/** How the levee is built and by whom: every figure with its default and its source. */
export function SectionBlock() {
  const { section, practice } = plan.value;
  const limit = formatLength(practice.limitM, unitSystem.value);
  const changed = SECTION_GROUPS.flatMap((group) => group.lines).filter(
    ({ path }) => !isOwnFigure(path) && !isStandard(plan.value, path),
  );
  const summary = `base ${Number(section.baseRatio.toFixed(2))} × height, limit ${limit}`;
  return (
    <Disclosure
      id="section"
      title="Levee type and bags"
      summary={summary}
      line={changed.length > 0 ? changedWords(changed.length) : undefined}
    >
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
    </Disclosure>
  );
}

function changedWords(count: number): string {
  return count === 1
    ? "1 figure differs from its default"
    : `${count} figures differ from their defaults`;
}

function resetAll(lines: readonly SettingLine[]): void {
  edit({
    note: "Set levee type and bags back to their defaults",
    change: (now) =>
      lines.reduce((next, { path }) => withSetting(next, path, SETTINGS[path].defaultSI), now),
  });
}
