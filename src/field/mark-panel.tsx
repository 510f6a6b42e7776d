import { useSignal } from "@preact/signals";
import { useEffect, useRef, useState } from "preact/hooks";
import { asFailure, type Failure } from "../../shared/failure.ts";
import type { BuildState } from "../../shared/plan.ts";
import { BUILD_STATES } from "../../shared/plan-schema.ts";
import { stationsWords } from "../../shared/words/crew-parts.ts";
import { failureText } from "../../shared/words/failure.ts";
import {
  buildStateWords,
  CLEAR_FIRST,
  WHO_CLEARED,
  YOUR_NAME,
} from "../../shared/words/field-progress.ts";
import { storePhoto } from "../document/photos.ts";
import { unitSystem } from "../live/screen.ts";
import { FileButton } from "../ui/file-button.tsx";
import { type AtStake, checksHere } from "./at.ts";
import { builtHere, markHere, rememberWhoMarks, whoMarks } from "./marking.ts";
import { MustFixBox } from "./must-fix-box.tsx";
import { closePanel } from "./panel.ts";
import { PanelHead } from "./panel-head.tsx";
import { PhotoView } from "./photo-view.tsx";
import { Read } from "./read.tsx";

/** Marks a stretch: how far it is built, by whom, with a note and a photo. A Must fix is cleared by a named person first. */
export function MarkPanel({ at }: { readonly at: AtStake }) {
  const system = unitSystem.value;
  const built = builtHere.value;
  const name = useSignal(whoMarks());
  const cleared = useSignal(built?.isOfOtherPlan ? "" : (built?.mark?.clearedBy ?? ""));
  const failure = useSignal<Failure | null>(null);
  const checks = checksHere.value;
  const mustClear = checks !== null && (checks.mustFix.length > 0 || checks.isOverLimit);
  const isBlocked = mustClear && cleared.value.trim() === "";
  if (!at.stretch || !built) return null;
  const { mark, state } = built;
  const remarks = () => ({
    by: name.value.trim(),
    clearedBy: mustClear ? cleared.value.trim() : "",
  });
  const set = (next: BuildState) => {
    rememberWhoMarks(name.value.trim());
    if (markHere(next, remarks())) closePanel();
  };
  const takePhoto = async ([file]: File[]) => {
    failure.value = null;
    const photoId = file && (await storePhoto(file).catch((thrown) => refuse(thrown)));
    if (photoId) markHere(state, { ...remarks(), photoId });
  };
  const refuse = (thrown: unknown) => {
    failure.value = asFailure(thrown);
    return null;
  };
  return (
    <Read label="Marks of this stretch" class="crew-page">
      <PanelHead title={stationsWords(at.stretch, system)} onBack={closePanel} />
      <MustFixBox />
      {mustClear && (
        <Field
          label={WHO_CLEARED}
          value={cleared.value}
          isFirst
          onInput={(text) => {
            cleared.value = text;
          }}
        />
      )}
      {isBlocked && <p class="crew-soft">{CLEAR_FIRST}</p>}
      <fieldset class="crew-states" aria-label="How far it is built">
        {BUILD_STATES.map((each) => (
          <button
            key={each}
            type="button"
            class="crew-key"
            aria-pressed={state === each}
            disabled={isBlocked && each !== "not-begun"}
            onClick={() => set(each)}
          >
            {buildStateWords(each)}
          </button>
        ))}
      </fieldset>
      <Field
        label={YOUR_NAME}
        value={name.value}
        onInput={(text) => {
          name.value = text;
        }}
      />
      <Field
        label="Note"
        value={mark?.note ?? ""}
        longest={500}
        onDone={(note) => note !== (mark?.note ?? "") && markHere(state, { ...remarks(), note })}
      />
      <FileButton
        label="Photo of this stretch"
        accept="image/*"
        class="crew-key"
        onFiles={(files) => void takePhoto(files)}
      >
        {mark && mark.photoId !== "" ? "Take another photo" : "Add a photo"}
      </FileButton>
      {failure.value && (
        <p class="crew-said" role="alert">
          {failureText(failure.value, system)}
        </p>
      )}
      {mark && mark.photoId !== "" && <PhotoView id={mark.photoId} />}
    </Read>
  );
}

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly longest?: number;
  readonly isFirst?: boolean;
  readonly onInput?: (text: string) => void;
  readonly onDone?: (text: string) => void;
}

function Field({ label, value, longest = 120, isFirst = false, onInput, onDone }: FieldProps) {
  const input = useRef<HTMLInputElement>(null);
  const [typed, setTyped] = useState(value);
  useEffect(() => {
    if (isFirst) input.current?.focus();
  }, [isFirst]);
  return (
    <label class="crew-field">
      {label}
      <input
        ref={input}
        type="text"
        autocomplete="off"
        maxLength={longest}
        value={typed}
        onInput={({ currentTarget }) => {
          setTyped(currentTarget.value);
          onInput?.(currentTarget.value);
        }}
        onChange={() => onDone?.(typed.trim())}
      />
    </label>
  );
}
