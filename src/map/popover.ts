import { type Map as MapLibreMap, Popup, type PositionAnchor } from "maplibre-gl";
import { type ComponentChildren, render } from "preact";

export interface PopoverOptions {
  readonly at: readonly [number, number];
  /** How far from the place what was pressed stands, CSS pixels to the right and down. */
  readonly offset?: readonly [number, number];
  /** Name for screen readers. */
  readonly label: string;
  readonly content: ComponentChildren;
  readonly onClose?: () => void;
}

const CLEAR_PX = 14;

let present: Popup | null = null;

/** Closes the popover that is open on the map, if any. */
export function closePopover(): void {
  present?.remove();
}

/** Opens a small box that belongs to a place on the map, in place of the one that is open. */
export function openPopover(map: MapLibreMap, options: PopoverOptions): void {
  closePopover();
  const box = document.createElement("div");
  box.setAttribute("role", "group");
  box.setAttribute("aria-label", options.label);
  render(options.content, box);
  const [right, down] = options.offset ?? [0, 0];
  const popup = new Popup({
    className: "map-popover",
    maxWidth: "320px",
    offset: around(right, down),
  })
    .setLngLat([...options.at])
    .setDOMContent(box)
    .addTo(map);
  const byEscape = (event: KeyboardEvent) => {
    if (event.key !== "Escape") return;
    event.stopPropagation();
    popup.remove();
  };
  popup.getElement()?.addEventListener("keydown", byEscape);
  popup.on("close", () => {
    if (present === popup) present = null;
    render(null, box);
    options.onClose?.();
  });
  present = popup;
}

/** Offsets for each side the box may open on: clear of the mark, wherever the mark stands. */
function around(right: number, down: number): Record<PositionAnchor, [number, number]> {
  return {
    center: [right, down],
    top: [right, down + CLEAR_PX],
    bottom: [right, down - CLEAR_PX],
    left: [right + CLEAR_PX, down],
    right: [right - CLEAR_PX, down],
    "top-left": [right, down + CLEAR_PX],
    "top-right": [right, down + CLEAR_PX],
    "bottom-left": [right, down - CLEAR_PX],
    "bottom-right": [right, down - CLEAR_PX],
  };
}
