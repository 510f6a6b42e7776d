import { computed, effect } from "@preact/signals";
import { type Map as MapLibreMap, Marker } from "maplibre-gl";
import { render } from "preact";
import type { Check } from "../../shared/sizing-types.ts";
import { sortedChecks } from "../../shared/words/check-list.ts";
import { checkWords } from "../../shared/words/checks.ts";
import { plan } from "../document/store.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import { SeverityMark, severityWord } from "../drawing/severity-mark.tsx";
import { chosenLine } from "../live/results.ts";
import { pointedCheck, unitSystem } from "../live/screen.ts";
import { shownMarks } from "../live/shown-marks.ts";
import { chosenChecks } from "../live/water-now.ts";
import { type CheckGroup, groupChecks } from "./check-groups.ts";
import { openPopover } from "./popover.ts";
import { restingView } from "./view.ts";

/** Checks whose places have marks of their own, see water-marks.tsx and culvert-questions.tsx. */
const MARKED_ELSEWHERE = new Set(["water-gets-in", "overtops", "not-reached", "possible-culvert"]);

interface Shown {
  readonly marker: Marker;
  readonly button: HTMLButtonElement;
  group: CheckGroup;
}

/** Keeps a button on the map at every check that has a place, while checks are shown; it says what the check says. */
export function keepCheckMarks(map: MapLibreMap): void {
  const shown = new Map<string, Shown>();
  const checks = computed(() =>
    shownMarks.value.has("checks")
      ? chosenChecks.value.filter(({ id }) => !MARKED_ELSEWHERE.has(id))
      : [],
  );
  effect(() => {
    unitSystem.value;
    const { metresPerPx } = restingView.value;
    const line = chosenLine.value && { ...chosenLine.value, checks: checks.value };
    const project = ([lng, lat]: readonly [number, number]) => map.project({ lng, lat });
    const side = line ? waterSideIn(plan.peek(), line.id) : -1;
    const groups = line ? groupChecks(line, project, metresPerPx, side) : [];
    const keys = new Set(groups.map((group) => group.key));
    for (const [key, { marker }] of shown) {
      if (keys.has(key)) continue;
      marker.remove();
      shown.delete(key);
    }
    for (const group of groups) {
      const known = shown.get(group.key);
      if (known) update(known, group);
      else shown.set(group.key, add(map, group));
    }
  });
}

function add(map: MapLibreMap, group: CheckGroup): Shown {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "map-check";
  const marker = new Marker({ element: button }).setLngLat([...group.at]).addTo(map);
  const mark: Shown = { marker, button, group };
  update(mark, group);
  button.addEventListener("click", (event) => {
    event.stopPropagation();
    open(map, mark);
  });
  return mark;
}

function update(mark: Shown, group: CheckGroup): void {
  mark.group = group;
  mark.marker.setLngLat([...group.at]).setOffset([...group.offset]);
  const first = group.checks[0]!;
  const name = nameOf(group);
  mark.button.setAttribute("aria-label", name);
  mark.button.dataset.says = name;
  mark.button.dataset.severity = first.severity;
  mark.button.dataset.checks = group.checks.map((check) => check.id).join(" ");
  mark.button.dataset.count = String(sortedChecks(group.checks).length);
  render(<SeverityMark severity={first.severity} />, mark.button);
}

function open(map: MapLibreMap, { group, button }: Shown): void {
  const first = group.checks[0]!;
  pointedCheck.value = { fromM: first.fromM, toM: first.toM, at: first.at };
  openPopover(map, {
    at: group.at,
    offset: group.offset,
    label: "What the check says",
    content: <CheckTexts checks={group.checks} />,
    onClose: () => {
      pointedCheck.value = null;
      button.focus({ preventScroll: true });
    },
  });
}

function CheckTexts({ checks }: { readonly checks: readonly Check[] }) {
  const system = unitSystem.value;
  return (
    <ul class="map-check-texts">
      {sortedChecks(checks).map((check, index) => {
        const { where, what, remedy, rule, source } = checkWords(check, system);
        return (
          <li key={`${check.id} ${check.fromM} ${index}`}>
            <SeverityMark severity={check.severity} />
            <div>
              <p>
                {where && <strong>{where}: </strong>}
                {what}
              </p>
              <p>{remedy}</p>
              <p class="map-check-rule">
                {rule} <cite>{source}</cite>
              </p>
            </div>
          </li>
        );
      })}
    </ul>
  );
}

function nameOf(group: CheckGroup): string {
  const first = group.checks[0]!;
  const others = sortedChecks(group.checks).length - 1;
  const more = others > 0 ? `, and ${others} more here` : "";
  return `${severityWord(first.severity)}: ${checkWords(first, unitSystem.value).message}${more}`;
}
