import { useEffect, useRef, useState } from "preact/hooks";
import type { Failure } from "../../../shared/failure.ts";
import type { Alignment } from "../../../shared/plan.ts";
import { isStandard } from "../../../shared/reaches.ts";
import { SECTIONS } from "../../../shared/sections.ts";
import { formatStation, parseStation } from "../../../shared/units.ts";
import { buildStretch } from "../../document/edits/reaches.ts";
import { markedM, unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { SectionSelect } from "./section-select.tsx";
import { stretchDraft } from "./stretch-draft.ts";

interface StretchFormProps {
  readonly alternative: Alignment;
  readonly lengthM: number;
}

const FIRST_OTHER = SECTIONS.find(({ id }) => !isStandard({ section: id })) ?? SECTIONS[0]!;

/** Gives a stretch between two stations a section of its own, in one step. */
export function StretchForm({ alternative, lengthM }: StretchFormProps) {
  const system = unitSystem.value;
  const form = useRef<HTMLFormElement>(null);
  const [typed, setTyped] = useState({ from: "", to: "" });
  const [section, setSection] = useState<string>(FIRST_OTHER.id);
  const [failure, setFailure] = useState<Failure | null>(null);
  const draft = stretchDraft.value;
  useEffect(() => {
    if (!draft) return;
    const [from, to] = [formatStation(draft.fromM, system), formatStation(draft.toM, system)];
    setTyped({ from, to });
    if (draft.section) setSection(draft.section);
    setFailure(null);
    if (form.current) showInPlace(form.current);
    form.current?.querySelector("select")?.focus({ preventScroll: true });
    stretchDraft.value = null;
  }, [draft, system]);
  const build = () => {
    const [from, to] = [parseStation(typed.from, system), parseStation(typed.to, system)];
    if (!from.ok) return setFailure(from.failure);
    if (!to.ok) return setFailure(to.failure);
    const stretch = { fromM: from.value, toM: Math.min(to.value, lengthM) };
    const outcome = buildStretch(alternative, stretch, { section, figures: {} }, lengthM);
    setFailure(outcome.ok ? null : outcome.failure);
    if (!outcome.ok) return;
    setTyped({ from: "", to: "" });
    const overM = stretch.fromM > stretch.toM ? lengthM : 0;
    markedM.value = ((stretch.fromM + stretch.toM + overM) / 2) % lengthM;
  };
  const station = (end: "from" | "to", label: string) => (
    <label>
      {label}{" "}
      <input
        type="text"
        class="field-input"
        size={7}
        value={typed[end]}
        placeholder={system === "us" ? "4+50" : "0+140.0"}
        aria-label={`Stretch ${label.toLowerCase()}`}
        aria-invalid={failure !== null}
        onInput={(event) => setTyped({ ...typed, [end]: event.currentTarget.value })}
      />
    </label>
  );
  return (
    <form
      ref={form}
      class="inline-form stretch-form"
      aria-label="Build a stretch otherwise"
      onSubmit={(event) => {
        event.preventDefault();
        build();
      }}
    >
      {station("from", "From")}
      {station("to", "to")}
      <span class="stretch-as">
        <SectionSelect label="Build the stretch as" value={section} onSection={setSection} />
        <button type="submit" class="tool-button">
          Build so
        </button>
      </span>
      {failure && (
        <p class="field-why" role="alert">
          <FailureText failure={failure} system={system} />
        </p>
      )}
    </form>
  );
}

/** Scrolls the worksheet, and nothing around it, until an element stands in its middle. */
function showInPlace(element: HTMLElement): void {
  const place = element.closest<HTMLElement>(".worksheet-place");
  if (!place) return;
  const downPx = element.getBoundingClientRect().top - place.getBoundingClientRect().top;
  place.scrollTop += downPx - place.clientHeight / 2;
}
