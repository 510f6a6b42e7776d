import { computed, effect, untracked } from "@preact/signals";
import type { FeatureCollection } from "geojson";
import type { Map as MapLibreMap } from "maplibre-gl";
import { leveeCores, leveeShapes } from "../../shared/line-shapes/levee-shapes.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { reachShapes } from "../drawing/line/reach-shapes.ts";
import { stationMarks } from "../drawing/line/station-marks.ts";
import { waterSideIn } from "../drawing/line/water-side.ts";
import { sizedLags } from "../live/current.ts";
import { fieldOpen } from "../live/field.ts";
import { ground } from "../live/ground.ts";
import { chosenLine } from "../live/results.ts";
import { markedM, pointedCheck, showAll, unitSystem } from "../live/screen.ts";
import { lookAtPlan, planOutOfView } from "./camera.ts";
import { keepCheckMarks } from "./check-marks.tsx";
import { keepChoosing } from "./choose-other.ts";
import { onMap } from "./drawable.ts";
import { dragging } from "./drawing-state.ts";
import { fadeLevee } from "./fade-levee.ts";
import { keepMarkLabel } from "./mark-label.ts";
import { markedShapes, pointedShape } from "./marked-shapes.ts";
import { planShapes } from "./plan-shapes.ts";
import { NOTHING, show } from "./sources.ts";
import { restingView } from "./view.ts";

/** Size of the stations' labels, and in the field, where they are read in the sun. */
const STATION_PX = 12.5;
const FIELD_PX = 15;
/** While a corner is dragged, labels are laid out anew only so often: laying them out is slow. */
const STATIONS_WHILE_DRAGGING_MS = 120;

/** The levee as wide as its base, and its center line for where that is too narrow to be seen. */
function leveeOnMap(line: SizedLine, limitM: number): FeatureCollection {
  const parts = [leveeShapes(line, limitM), leveeCores(line, limitM)];
  return { type: "FeatureCollection", features: parts.flatMap(({ features }) => features) };
}

/** Keeps what lies on the ground (levee, stations, the person's drawing, marks) in step with plan and sizes. */
export function keepShapes(map: MapLibreMap): void {
  const limitM = computed(() => plan.value.practice.limitM);
  const metresPerPx = computed(() => restingView.value.metresPerPx);
  let stationsAt = 0;
  const names = computed(() => plan.value.alignments.map((each) => each.id).join(" "));

  onMap([map], () => {
    const line = chosenLine.value;
    show(map, "levee", line ? leveeOnMap(line, limitM.value) : NOTHING);
  });
  onMap([map], () => fadeLevee(map, sizedLags.value));
  onMap([map], () => {
    const line = chosenLine.value;
    const side = line ? waterSideIn(plan.peek(), line.id) : 1;
    show(map, "reaches", line ? reachShapes(line, side) : NOTHING);
  });
  onMap([map], () => {
    const line = chosenLine.value;
    if (dragging.value && performance.now() - stationsAt < STATIONS_WHILE_DRAGGING_MS) return;
    stationsAt = performance.now();
    if (!line) return show(map, "stations", NOTHING);
    const side = waterSideIn(plan.peek(), line.id);
    show(map, "stations", stationMarks(line, metresPerPx.value, unitSystem.value, side));
  });
  onMap([map], () => {
    map.setLayoutProperty("station-labels", "text-size", fieldOpen.value ? FIELD_PX : STATION_PX);
  });
  const standing = computed(() => unlessSame(standingParts()));
  onMap([map], () => {
    standing.value;
    const shown = {
      plan: plan.peek(),
      chosenId: chosenId.value,
      showAll: showAll.value && !fieldOpen.value,
    };
    show(map, "plan", planShapes(shown));
  });
  onMap([map], () => {
    const line = chosenLine.value;
    const chainageM = markedM.value ?? line?.totals.greatestHeightAtM ?? null;
    show(map, "marked", markedShapes(line, chainageM, metresPerPx.value));
  });
  onMap([map], () => {
    show(map, "pointed", pointedShape(chosenLine.value, pointedCheck.value));
  });
  effect(() => {
    names.value;
    untracked(() => {
      if (ground.value && planOutOfView(map)) lookAtPlan(map, false);
    });
  });
  effect(() => {
    const at = pointedCheck.value?.at;
    if (at && !map.getBounds().contains([at[0], at[1]])) map.panTo([at[0], at[1]]);
  });
  keepCheckMarks(map);
  keepMarkLabel(map);
  keepChoosing(map);
}

/** What the plan's standing shapes are drawn from: everything but the corners of the chosen alternative. */
function standingParts(): readonly unknown[] {
  const { structures, noGo, sources, culverts, drains, roads, workPlaces } = plan.value;
  const { gauge, flow, alignments } = plan.value;
  return [
    structures,
    noGo,
    sources,
    culverts,
    drains,
    roads,
    workPlaces,
    gauge,
    flow,
    ...alignments.filter((each) => each.id !== chosenId.value),
  ];
}

let lastParts: readonly unknown[] = [];

/** The parts last seen when they are the same ones, so that a corner being dragged redraws nothing else. */
function unlessSame(parts: readonly unknown[]): readonly unknown[] {
  const same = parts.length === lastParts.length && parts.every((part, i) => part === lastParts[i]);
  if (!same) lastParts = parts;
  return lastParts;
}
