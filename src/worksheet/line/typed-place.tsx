import { signal } from "@preact/signals";
import { useId, useState } from "preact/hooks";
import type { Failure } from "../../../shared/failure.ts";
import type { LonLat } from "../../../shared/plan.ts";
import { nameOf } from "../../../shared/plan-footprints.ts";
import { freeNames } from "../../../shared/plan-names.ts";
import { planPlane } from "../../../shared/plan-plane.ts";
import { edit } from "../../document/edits/alternatives.ts";
import {
  footprintColumns,
  footprintLayer,
  isTaken,
  nearestFootprints,
  pick,
  placeMarked,
} from "../../live/footprints.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { readPlace } from "../../live/typed-place.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { NumberField } from "../../ui/number-field.tsx";
import { settingQuantity } from "../../ui/quantity.ts";

/** Sides of a rectangle in the place of a building, metres. */
const size = signal({ eastM: 12.192, northM: 9.144 });
const SIDE = { least: 1, most: 300 };

/** A building by its place: typed, marked on the map, then the nearest footprint or a rectangle of a typed size. */
export function TypedPlace() {
  const id = useId();
  const [text, setText] = useState("");
  const [failure, setFailure] = useState<Failure | null>(null);
  const at = placeMarked.value;
  const look = async () => {
    const read = await readPlace(text);
    setFailure(read.ok ? null : read.failure);
    placeMarked.value = read.ok ? read.value : null;
  };
  return (
    <form
      class="typed-place"
      onSubmit={(event) => {
        event.preventDefault();
        void look();
      }}
    >
      <label for={id}>Coordinates: lon, lat or grid x, y</label>
      <div class="named-row">
        <input
          id={id}
          class="field-input"
          type="text"
          autocomplete="off"
          value={text}
          disabled={!ground.value}
          aria-invalid={failure !== null}
          onInput={(event) => setText(event.currentTarget.value)}
        />
        <button type="submit" class="tool-button" disabled={!ground.value || text.trim() === ""}>
          Mark it
        </button>
      </div>
      {failure && (
        <p class="field-why" role="alert">
          <FailureText failure={failure} system={unitSystem.value} />
        </p>
      )}
      {at && <AtPlace at={at} />}
    </form>
  );
}

function AtPlace({ at }: { readonly at: LonLat }) {
  const layer = footprintLayer.value;
  const nearest = layer && nearestFootprints(layer, at, "", 1)[0];
  const { eastM, northM } = size.value;
  const side = (label: string, value: number, key: "eastM" | "northM") => (
    <NumberField
      system={unitSystem.value}
      label={label}
      value={value}
      quantity={settingQuantity("practice.setbackM")}
      range={SIDE}
      onValue={(next) => {
        if (next !== null) size.value = { ...size.peek(), [key]: next };
      }}
    />
  );
  return (
    <>
      {nearest && !isTaken(nearest) && (
        <button
          type="button"
          class="tool-button"
          onClick={() => {
            pick(nearest);
            placeMarked.value = null;
          }}
        >
          Take the nearest: {nameOf(nearest, footprintColumns.value) ?? "footprint"}
        </button>
      )}
      {side("Rectangle, east to west", eastM, "eastM")}
      {side("Rectangle, north to south", northM, "northM")}
      <button type="button" class="tool-button" onClick={() => addRectangle(at)}>
        Put a rectangle there
      </button>
    </>
  );
}

function addRectangle(at: LonLat): void {
  const plane = planPlane(at);
  const [east, north] = [size.peek().eastM / 2, size.peek().northM / 2];
  const corner = (x: number, y: number): LonLat => plane.toLonLat(x, y) as LonLat;
  const outline = [
    corner(-east, -north),
    corner(east, -north),
    corner(east, north),
    corner(-east, north),
  ].map(([lon, lat]): LonLat => [Number(lon.toFixed(9)), Number(lat.toFixed(9))]);
  edit({
    note: "Put a building where its coordinates are",
    change: (now) => ({
      ...now,
      structures: [
        ...now.structures,
        {
          ...freeNames("Building ", "structure-", now.structures),
          outline,
          floorM: null,
        },
      ],
    }),
  });
  placeMarked.value = null;
}
