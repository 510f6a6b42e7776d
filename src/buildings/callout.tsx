import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { BuildingRow } from "../../shared/buildings/rows.ts";
import { geoBoxOf } from "../../shared/geo-box.ts";
import { stateSentence } from "../../shared/words/building-states.ts";
import {
  greatestHeightWords,
  leveeBagsWords,
  ownRingsWords,
  ringTitle,
  TABLE,
} from "../../shared/words/buildings-table.ts";
import { lineMustFix } from "../../shared/words/ring-list.ts";
import { openInPlan } from "../live/buildings/in-plan.ts";
import { listed } from "../live/buildings/listed.ts";
import { pickedId } from "../live/buildings/shown.ts";
import { unitSystem } from "../live/screen.ts";
import { Icon } from "../ui/icons.tsx";
import type { LentMap } from "./lent-map.ts";

const EDGE_PX = 10;
const GAP_PX = 16;
/** Taken by the buttons of the map, from its right and upper edges, pixels. */
const CONTROLS = { width: 62, height: 134 };

/** A note at the picked building or ring: what it takes, and the way into the plan. */
export function Callout({ row, map }: { readonly row: BuildingRow; readonly map: LentMap }) {
  const system = unitSystem.value;
  const box = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState({ width: 320, height: 60 });
  useLayoutEffect(() => {
    const now = box.current;
    if (now && (now.offsetWidth !== size.width || now.offsetHeight !== size.height)) {
      setSize({ width: now.offsetWidth, height: now.offsetHeight });
    }
  });
  map.view.value;
  const place = placeOf(row, map, size);
  if (!place) return null;
  const words = [
    leveeBagsWords(row),
    ownRingsWords(row),
    greatestHeightWords(row, system),
    stateSentence(row, system),
    row.line && lineMustFix(row.line, system),
  ].filter((each) => each !== null && each !== "");
  return (
    <div class="county-callout" ref={box} role="status" style={place}>
      <p>
        <b>{ringTitle(row)}</b>
        <button
          type="button"
          class="county-close"
          aria-label={TABLE.close}
          onClick={() => {
            pickedId.value = null;
          }}
        >
          <Icon name="close" />
        </button>
      </p>
      <p>
        {words.join(" ")}{" "}
        {row.line && (
          <button type="button" class="county-text-act" onClick={() => openInPlan(row)}>
            {TABLE.openInPlan} ›
          </button>
        )}
      </p>
    </div>
  );
}

/** A place in the map's room, in pixels from its edges. */
type Place = Readonly<Partial<Record<"left" | "top" | "bottom", string>>>;

/**
 * Below what it speaks of, or above where there is no room; null while that is out of sight. At the room's lower edge
 * where the browser cannot draw a map.
 */
function placeOf(
  row: BuildingRow,
  map: LentMap,
  { width, height }: { readonly width: number; readonly height: number },
): Place | null {
  const building = listed.value?.buildings.find(({ id }) => row.members.includes(id));
  const around = geoBoxOf(row.line?.coordinates ?? building?.parts.flat() ?? []);
  const upper = map.upper();
  if (!upper) return { left: `${EDGE_PX}px`, bottom: `${EDGE_PX}px` };
  if (!around) return null;
  const [west, south, east, north] = around;
  const low = upper.project([(west + east) / 2, south]);
  const high = upper.project([(west + east) / 2, north]);
  const { clientWidth, clientHeight } = upper.getContainer();
  const isOut = low.x < 0 || low.x > clientWidth || low.y < 0 || high.y > clientHeight;
  if (isOut) return null;
  const below = low.y + GAP_PX;
  const fits = below + height + EDGE_PX <= clientHeight;
  const top = fits ? below : Math.max(EDGE_PX, high.y - GAP_PX * 2 - height);
  const right = clientWidth - width - (top < CONTROLS.height ? CONTROLS.width : EDGE_PX);
  const left = Math.max(EDGE_PX, Math.min(low.x - width / 2, right));
  return { left: `${left}px`, top: `${top}px` };
}
