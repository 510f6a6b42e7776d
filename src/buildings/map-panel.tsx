import { geoBoxOf } from "../../shared/geo-box.ts";
import { MapScale } from "../drawing/map-scale.tsx";
import "./map-panel.css";
import { computed, effect } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { useEffect, useRef } from "preact/hooks";
import type { BuildingRow } from "../../shared/buildings/rows.ts";
import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import { BUILDINGS } from "../../shared/words/buildings-answer.ts";
import { classRangeWords } from "../../shared/words/field-map.ts";
import { plan } from "../document/store.ts";
import {
  type Box,
  buildingShapes,
  lineShapes,
  ownLineShapes,
  signShapes,
} from "../drawing/buildings/map-shapes.ts";
import { ClassSwatch } from "../drawing/class-bar.tsx";
import { choiceShown } from "../live/buildings/choosing.ts";
import { listed } from "../live/buildings/listed.ts";
import { lineInPlan } from "../live/buildings/open.ts";
import { pickedRow, rowsNow, stateFilter, statesNow, sweepNow } from "../live/buildings/shown.ts";
import { unitSystem } from "../live/screen.ts";
import { Callout } from "./callout.tsx";
import type { LentMap } from "./lent-map.ts";
import { installCounty, PICKABLE, PREFIX } from "./map-layers.ts";

interface MapPanelProps {
  readonly map: LentMap;
  readonly onPick: (row: BuildingRow) => void;
}

const PADDING = { top: 44, bottom: 48, left: 40, right: 60 };
const CLOSEST_ZOOM = 18;
const SCALE_PX = 150;
/** Where the view looked when it was left; it looks there again. */
let lastLooked: {
  readonly from: object | null;
  readonly center: [number, number];
  readonly zoom: number;
} | null = null;

/** All buildings on the map by their states, the chosen lines with their numbers. */
export function MapPanel({ map: lent, onPick }: MapPanelProps) {
  const place = useRef<HTMLDivElement>(null);
  const picking = useRef(onPick);
  picking.current = onPick;
  useEffect(() => {
    const element = lent.element();
    const own = place.current;
    own?.prepend(element);
    const map = lent.upper();
    const giveBack = () => {
      if (element.parentElement === own) element.remove();
    };
    if (!map) return giveBack;
    const before = { center: map.getCenter().toArray(), zoom: map.getZoom() };
    const stops = [
      keepLayers(lent, map),
      lent.keepAlone(PREFIX),
      keepPicking(map, (row) => picking.current(row)),
      keepCamera(map),
    ];
    return () => {
      for (const stop of stops) stop();
      giveBack();
      lookAtPlanAgain(map, before);
    };
  }, [lent]);
  return (
    <div class="county-map" ref={place}>
      {lent.upper() && (
        <>
          <Controls map={lent} />
          <MapScale
            class="county-scale"
            metresPerPx={lent.view.value.metresPerPx}
            widestPx={SCALE_PX}
            system={unitSystem.value}
          />
          {choiceShown.value && <HeightLegend />}
        </>
      )}
      {pickedRow.value && <Callout row={pickedRow.value} map={lent} />}
    </div>
  );
}

function keepLayers(lent: LentMap, map: MapLibreMap): () => void {
  const buildings = computed(() => listed.value?.buildings ?? []);
  const limitM = computed(() => plan.value.practice.limitM);
  const draw = (now: () => void) => lent.onMap([map], now);
  const stops = [
    draw(() => installCounty(lent, map, lent.colours.value, stateFilter.value)),
    draw(() => {
      lent.show(map, "county-buildings", buildingShapes(buildings.value, statesNow.value));
      lent.show(map, "county-signs", signShapes(buildings.value, statesNow.value));
    }),
    draw(() => lent.show(map, "county-lines", lineShapes(rowsNow.value, limitM.value))),
    draw(() => {
      const row = pickedRow.value;
      const { checked } = sweepNow.value;
      const own = row && row.members.length > 1 ? row.members : [];
      const lines = own.flatMap((id) => checked.get(id)?.line ?? []);
      lent.show(map, "county-own", ownLineShapes(lines));
      lent.show(map, "county-picked", ownLineShapes(row?.line ? [row.line] : []));
    }),
  ];
  return () => {
    for (const stop of stops) stop();
    for (const source of [
      "county-buildings",
      "county-signs",
      "county-lines",
      "county-own",
      "county-picked",
    ]) {
      lent.show(map, source, { type: "FeatureCollection", features: [] });
    }
  };
}

/** A click on a building or inside a chosen line picks its row. */
function keepPicking(map: MapLibreMap, pick: (row: BuildingRow) => void): () => void {
  const hit = (point: { x: number; y: number }) => {
    const layers = PICKABLE.filter((id) => map.getLayer(id));
    return map.queryRenderedFeatures([point.x, point.y], { layers })[0] ?? null;
  };
  const click = map.on("click", ({ point }) => {
    const found = hit(point)?.properties;
    if (!found) return;
    const id = found.id ?? listed.peek()?.buildings[Number(found.index)]?.id;
    const row = rowsNow.peek().find((each) => each.id === id || each.members.includes(String(id)));
    if (row) pick(row);
  });
  const move = map.on("mousemove", ({ point }) => {
    map.getCanvas().style.cursor = hit(point) ? "pointer" : "";
  });
  return () => {
    click.unsubscribe();
    move.unsubscribe();
    map.getCanvas().style.cursor = "";
  };
}

/** Looks at all buildings when they come, where it looked last when the view is opened again, and at what is picked. */
function keepCamera(map: MapLibreMap): () => void {
  let shownFor: object | null = lastLooked?.from ?? null;
  if (lastLooked) map.jumpTo({ center: lastLooked.center, zoom: lastLooked.zoom });
  const from = computed(() => listed.value?.buildings.map(({ parts }) => parts[0]!) ?? null);
  const first = computed(() => from.value?.[0] ?? null);
  const stops = [
    effect(() => {
      const now = first.value;
      if (!now || now === shownFor) return;
      shownFor = now;
      requestAnimationFrame(() => lookAtAllWhenLaidOut(map));
    }),
    effect(() => {
      const row = pickedRow.value;
      const box = row && boxOfRow(row);
      if (!box) return;
      const [west, south, east, north] = box;
      if (map.getBounds().contains([west, south]) && map.getBounds().contains([east, north])) {
        return;
      }
      map.panTo([(west + east) / 2, (south + north) / 2]);
    }),
  ];
  return () => {
    for (const stop of stops) stop();
    const [lon, lat] = map.getCenter().toArray();
    lastLooked = { from: shownFor, center: [lon, lat], zoom: map.getZoom() };
  };
}

function lookAtAll(map: MapLibreMap): void {
  const buildings = listed.peek()?.buildings ?? [];
  const box = geoBoxOf(buildings.flatMap(({ parts }) => parts.flat()));
  if (box) bring(map, box);
}

/** Looks at all, and again where the table that comes with the buildings takes room from the map. */
function lookAtAllWhenLaidOut(map: MapLibreMap): void {
  const look = () => lookAtAll(map);
  look();
  map.on("resize", look);
  map.once("idle", () => map.off("resize", look));
}

function bring(map: MapLibreMap, [west, south, east, north]: Box): void {
  map.fitBounds([west, south, east, north], {
    padding: PADDING,
    maxZoom: CLOSEST_ZOOM,
    duration: 0,
  });
}

/** The plan is looked at as before the view was opened; the line opened from it as large as it fits. */
function lookAtPlanAgain(
  map: MapLibreMap,
  before: { readonly center: [number, number]; readonly zoom: number },
): void {
  const opened = lineInPlan.peek();
  const box =
    opened?.opened === plan.peek() ? geoBoxOf(opened.opened.alignments[0]?.corners ?? []) : null;
  if (box) requestAnimationFrame(() => bring(map, box));
  else map.jumpTo(before);
}

function boxOfRow(row: BuildingRow): Box | null {
  if (row.line) return geoBoxOf(row.line.coordinates);
  const building = listed.peek()?.buildings.find(({ id }) => id === row.id);
  return building ? geoBoxOf(building.parts.flat()) : null;
}

function Controls({ map }: { readonly map: LentMap }) {
  return (
    <fieldset class="county-controls" aria-label={BUILDINGS.mapView}>
      <button type="button" aria-label={BUILDINGS.zoomIn} onClick={() => map.upper()?.zoomIn()}>
        +
      </button>
      <button type="button" aria-label={BUILDINGS.zoomOut} onClick={() => map.upper()?.zoomOut()}>
        −
      </button>
      <button type="button" onClick={() => withMap(map, lookAtAll)}>
        {BUILDINGS.lookAtAll}
      </button>
    </fieldset>
  );
}

function withMap(lent: LentMap, act: (map: MapLibreMap) => void): void {
  const map = lent.upper();
  if (map) act(map);
}

function HeightLegend() {
  const { limitM } = plan.value.practice;
  return (
    <div class="county-legend">
      <b>{BUILDINGS.height}</b>
      <ul>
        {Array.from({ length: HEIGHT_CLASSES - 1 }, (_, index) => (
          <li key={classRangeWords(index, limitM, unitSystem.value)}>
            <ClassSwatch index={index} /> {classRangeWords(index, limitM, unitSystem.value)}
          </li>
        ))}
      </ul>
    </div>
  );
}
