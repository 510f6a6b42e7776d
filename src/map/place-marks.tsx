import { effect, type ReadonlySignal } from "@preact/signals";
import { type Map as MapLibreMap, Marker } from "maplibre-gl";
import { render } from "preact";
import type { LonLat } from "../../shared/plan.ts";
import { openPopover } from "./popover.ts";

/** Clear of a corner's handle, pixels. */
const ABOVE: [number, number] = [0, -9];

/** A place on the map that the person should know: a button that says why when it is pressed. */
export interface PlaceMark {
  /** Names its look in the style sheet, as `data-kind`. */
  readonly kind: string;
  readonly at: LonLat;
  readonly title: string;
  readonly text: string;
  /** What is drawn in it, as a path; 16 units square. */
  readonly symbol: string;
  /** `above` floats it clear of its place, so that a corner under it can still be taken hold of. */
  readonly anchor?: "bottom-left" | "above";
}

/** Keeps buttons at places that change. */
export function keepPlaceMarks(
  map: MapLibreMap,
  marks: ReadonlySignal<readonly PlaceMark[]>,
): void {
  let shown: Marker[] = [];
  effect(() => {
    for (const marker of shown) marker.remove();
    shown = marks.value.map((mark) => add(map, mark));
  });
}

/** The drawing in a mark. */
export function MarkSymbol({ path }: { readonly path: string }) {
  return (
    <svg class="mark-symbol" viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
      <path d={path} />
    </svg>
  );
}

function add(map: MapLibreMap, mark: PlaceMark): Marker {
  const button = document.createElement("button");
  button.type = "button";
  button.className = "water-mark";
  button.dataset.kind = mark.kind;
  render(<MarkSymbol path={mark.symbol} />, button);
  const name = `${mark.title}: ${mark.text}`;
  button.setAttribute("aria-label", name);
  button.dataset.says = name;
  button.addEventListener("click", (event) => {
    event.stopPropagation();
    openPopover(map, {
      at: mark.at,
      label: mark.title,
      content: (
        <div>
          <strong>{mark.title}</strong>
          <p>{mark.text}</p>
        </div>
      ),
      onClose: () => button.focus({ preventScroll: true }),
    });
  });
  const look =
    mark.anchor === "above"
      ? { anchor: "bottom" as const, offset: ABOVE }
      : { anchor: "bottom-left" as const };
  return new Marker({ element: button, ...look }).setLngLat([...mark.at]).addTo(map);
}
