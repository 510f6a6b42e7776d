import "./culvert-questions.css";
import { computed, effect } from "@preact/signals";
import { type Map as MapLibreMap, Marker } from "maplibre-gl";
import type { LonLat } from "../../shared/plan.ts";
import {
  answerWords,
  CULVERT_QUESTION,
  candidateWords,
} from "../../shared/words/possible-culverts.ts";
import {
  answerCandidate,
  type CulvertAnswer,
  changeAnswer,
} from "../document/edits/possible-culverts.ts";
import { plan } from "../document/store.ts";
import { mapIsLent } from "../live/buildings/open.ts";
import { culvertsShown, isPointed } from "../live/culvert-questions.ts";
import { unitSystem } from "../live/screen.ts";
import { waterNow } from "../live/water-now.ts";
import { closePopover, openPopover } from "./popover.ts";

/** A place where there may be a culvert, as it is asked about on the map. */
interface Asked {
  readonly at: LonLat;
  readonly text: string;
  readonly isToLook: boolean;
  readonly answer: (answer: CulvertAnswer) => void;
}

const all = computed((): readonly Asked[] => {
  const system = unitSystem.value;
  const found = waterNow.value?.possibleCulverts.found ?? [];
  const toLook = (plan.value.possibleCulverts ?? []).filter(({ answer }) => answer === "look");
  return [
    ...found.map((each) => ({
      at: each.ends[0],
      text: candidateWords(each, system),
      isToLook: false,
      answer: (answer: CulvertAnswer) => answerCandidate(each.ends, answer),
    })),
    ...toLook.map((each) => ({
      at: each.path[0]!,
      text: `${each.name}. ${answerWords(each)}`,
      isToLook: true,
      answer: (answer: CulvertAnswer) => changeAnswer(each, answer),
    })),
  ];
});

/** Those that the map marks: all, or the one that is pointed at. */
const asked = computed((): readonly Asked[] => {
  if (mapIsLent.value) return [];
  return culvertsShown.value ? all.value : all.value.filter(({ at }) => isPointed(at));
});

/** Keeps a question mark on the map where there may be a culvert, to be answered there. */
export function keepCulvertQuestions(map: MapLibreMap): void {
  let shown: Marker[] = [];
  effect(() => {
    for (const marker of shown) marker.remove();
    shown = asked.value.map((each) => add(map, each));
  });
  effect(() => {
    asked.value.forEach(({ at }, k) => {
      shown[k]!.getElement().dataset.pointed = String(isPointed(at));
    });
  });
}

function add(map: MapLibreMap, each: Asked): Marker {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "culvert-question";
  button.textContent = "?";
  button.dataset.toLook = String(each.isToLook);
  const name = `${CULVERT_QUESTION.title} ${each.text}`;
  button.setAttribute("aria-label", name);
  button.dataset.says = CULVERT_QUESTION.title;
  button.addEventListener("click", (event) => {
    event.stopPropagation();
    openPopover(map, {
      at: each.at,
      label: CULVERT_QUESTION.title,
      content: <Question asked={each} />,
      onClose: () => button.focus({ preventScroll: true }),
    });
  });
  return new Marker({ element: button }).setLngLat([...each.at]).addTo(map);
}

function Question({ asked: { text, isToLook, answer } }: { readonly asked: Asked }) {
  const answers = CULVERT_QUESTION.answers.filter(({ value }) => !isToLook || value !== "look");
  return (
    <div>
      <strong>{CULVERT_QUESTION.title}</strong>
      <p>{text}</p>
      <div class="culvert-answers">
        {answers.map(({ value, words }) => (
          <button
            key={value}
            type="button"
            class="tool-button"
            onClick={() => {
              closePopover();
              answer(value);
            }}
          >
            {words}
          </button>
        ))}
      </div>
    </div>
  );
}
