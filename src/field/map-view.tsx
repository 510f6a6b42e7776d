import { computed, type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { HEIGHT_CLASSES } from "../../shared/height-class.ts";
import type { LonLat } from "../../shared/plan.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { formatStation } from "../../shared/units.ts";
import { MUST_FIX_TITLE } from "../../shared/words/field.ts";
import { classRangeWords, type NoMap } from "../../shared/words/field-map.ts";
import { gpsShortWords, placeWords, toStakeWords } from "../../shared/words/field-place.ts";
import { plan } from "../document/store.ts";
import { ClassSwatch } from "../drawing/class-bar.tsx";
import { MapScale } from "../drawing/map-scale.tsx";
import { unitSystem } from "../live/screen.ts";
import { MARK_KINDS, showMarks, shownMarks } from "../live/shown-marks.ts";
import { type AtStake, checksHere, goToStake } from "./at.ts";
import { gps, placeNow, startGps } from "./gps.ts";
import { MustFixSign } from "./must-fix-sign.tsx";
import { NoMapView } from "./no-map-view.tsx";
import { StakeKeys } from "./stake-keys.tsx";

/** The map of the main screen, to be looked at. */
export interface FieldMap {
  /** Why there is no picture of it; null while there is one. */
  readonly lack: ReadonlySignal<NoMap | null>;
  readonly element: () => HTMLElement;
  readonly zoomBy: (way: 1 | -1) => void;
  readonly lookAtLine: (line: SizedLine) => void;
  readonly lookAt: (at: LonLat) => void;
  /** Ground under a pixel at the middle of the map, metres; read in a view it is followed. */
  readonly metresPerPx: () => number;
  readonly keepPerson: (
    person: ReadonlySignal<{ readonly at: LonLat; readonly accuracyM: number } | null>,
  ) => () => void;
}

interface MapViewProps {
  readonly at: AtStake;
  readonly map: FieldMap;
  /** Opens the stake in figures. */
  readonly onStake: () => void;
}

const person = computed(() => (gps.value.kind === "fix" ? gps.value.fix : null));

/** Where the stake is, and where the person is. */
export function MapView({ at, map, onStake }: MapViewProps) {
  const lack = map.lack.value;
  // the map marks the stake that is named under it, not the highest place that planning marks
  useEffect(() => goToStake(at, at.index), []);
  return (
    <div class="crew-map">
      {lack === null ? <Picture at={at} map={map} /> : <NoMapView at={at} why={lack} />}
      <div class="crew-map-foot">
        <Classes />
        <Foot at={at} isOnMap={lack === null} />
        <StakeKeys at={at}>
          <button type="button" class="crew-key crew-key-said" onClick={onStake}>
            Open stake
          </button>
        </StakeKeys>
      </div>
    </div>
  );
}

function Picture({ at, map }: Pick<MapViewProps, "at" | "map">) {
  const place = useRef<HTMLDivElement>(null);
  const line = useRef(at.line);
  line.current = at.line;
  useEffect(() => {
    const element = map.element();
    const own = place.current;
    own?.prepend(element);
    const frame = requestAnimationFrame(() => map.lookAtLine(line.current));
    const takeAway = map.keepPerson(person);
    return () => {
      cancelAnimationFrame(frame);
      takeAway();
      if (element.parentElement === own) element.remove();
    };
  }, [map]);
  return (
    <div class="crew-map-place" ref={place}>
      <Show />
      <div class="crew-map-keys">
        <button type="button" aria-label="Zoom in" onClick={() => map.zoomBy(1)}>
          +
        </button>
        <button type="button" aria-label="Zoom out" onClick={() => map.zoomBy(-1)}>
          −
        </button>
        <button
          type="button"
          onClick={() => (person.value ? map.lookAt(person.value.at) : startGps())}
        >
          Me
        </button>
        <button type="button" onClick={() => map.lookAtLine(at.line)}>
          {at.staked.isRing ? "Ring" : "Line"}
        </button>
      </div>
      <MapScale
        class="crew-scale"
        metresPerPx={map.metresPerPx()}
        widestPx={110}
        system={unitSystem.value}
      />
    </div>
  );
}

interface FootProps {
  readonly at: AtStake;
  /** Whether the person is on a map, and nowhere else on the screen. */
  readonly isOnMap: boolean;
}

function Foot({ at, isOnMap }: FootProps) {
  const system = unitSystem.value;
  const { station, staked } = at;
  const here = placeNow.value;
  const checks = checksHere.value;
  const mustFix = checks !== null && (checks.mustFix.length > 0 || checks.isOverLimit);
  return (
    <div class="crew-map-stake">
      <h2>{formatStation(station.chainageM, system)}</h2>
      {here && isOnMap && <strong>{toStakeWords(here, staked, station.chainageM, system)}</strong>}
      {mustFix && (
        <p class="crew-map-must-fix">
          <MustFixSign /> {MUST_FIX_TITLE}
        </p>
      )}
      {isOnMap && (
        <p role="status">{here ? placeWords(here, system) : gpsShortWords(gps.value.kind)}</p>
      )}
    </div>
  );
}

function Classes() {
  const { limitM } = plan.value.practice;
  return (
    <ul class="crew-classes" aria-label="Height">
      {Array.from({ length: HEIGHT_CLASSES }, (_, index) => (
        <li key={classRangeWords(index, limitM, unitSystem.value)}>
          <ClassSwatch index={index} /> {classRangeWords(index, limitM, unitSystem.value)}
        </li>
      ))}
    </ul>
  );
}

const MARK_NAMES = { checks: "Checks", weakest: "Weakest places", water: "Water paths" } as const;

function Show() {
  const isOpen = useSignal(false);
  return (
    <div class="crew-show">
      <button
        type="button"
        aria-expanded={isOpen.value}
        onClick={() => {
          isOpen.value = !isOpen.value;
        }}
      >
        Show
      </button>
      {isOpen.value &&
        MARK_KINDS.map((kind) => (
          <label key={kind}>
            <input
              type="checkbox"
              checked={shownMarks.value.has(kind)}
              onChange={(event) => showMarks(kind, event.currentTarget.checked)}
            />
            {MARK_NAMES[kind]}
          </label>
        ))}
    </div>
  );
}
