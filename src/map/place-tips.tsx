import { type Map as MapLibreMap, type Point, Popup } from "maplibre-gl";
import { pipeStateWords } from "../../shared/words/pipes.ts";
import { structureWords } from "../../shared/words/structure.ts";
import { WORK_PLACES } from "../../shared/words/work-places.ts";
import { plan } from "../document/store.ts";
import { tool, unitSystem } from "../live/screen.ts";
import { waterNow } from "../live/water-now.ts";
import { cornerNear } from "./corner-popover.tsx";
import { dragging } from "./drawing-state.ts";
import { openPopover } from "./popover.ts";

const LAYERS = [
  "structure",
  "gauge",
  "sources",
  "pipes",
  "work-places",
  "culvert-casing",
  "truck-way-casing",
];
/** A corner nearer than this is what a tap means. */
const CORNER_PX = 16;

interface Tip {
  readonly key: string;
  readonly title: string;
  readonly text: string;
}

/** Says what a building, the gauge or a water source is where the pointer is on it, and where it is tapped; pipes, drains and work places too. */
export function keepPlaceTips(map: MapLibreMap): void {
  const popup = new Popup({
    className: "map-tip",
    closeButton: false,
    closeOnClick: false,
    maxWidth: "260px",
  });
  let shown = "";
  const hide = () => {
    shown = "";
    popup.remove();
  };
  map.on("mousemove", ({ point }) => {
    const tip = tool.peek() === "move" && !dragging.peek() ? tipAt(map, point) : null;
    if (!tip) return hide();
    if (tip.key === shown) return;
    shown = tip.key;
    popup.setText(`${tip.title}. ${tip.text}`).trackPointer().addTo(map);
  });
  map.on("mouseout", hide);
  let isPlacing = false;
  map.on("mousedown", () => {
    hide();
    isPlacing = tool.peek() !== "move";
  });
  map.on("click", ({ point, lngLat }) => {
    if (isPlacing || tool.peek() !== "move" || dragging.peek()) return;
    if (cornerNear(map, { containerX: point.x, containerY: point.y }, CORNER_PX)) return;
    const tip = tipAt(map, point);
    if (!tip) return;
    hide();
    openPopover(map, {
      at: [lngLat.lng, lngLat.lat],
      label: tip.title,
      content: (
        <div>
          <strong>{tip.title}</strong>
          <p>{tip.text}</p>
        </div>
      ),
    });
  });
}

function tipAt(map: MapLibreMap, point: Point): Tip | null {
  const layers = LAYERS.filter((id) => map.getLayer(id));
  const [hit] = map.queryRenderedFeatures(point, { layers });
  const { structures, gauge, culverts = [], drains = [], workPlaces = [] } = plan.peek();
  switch (hit?.properties.kind) {
    case "structure": {
      const structure = structures.find(({ id }) => id === hit.properties.id);
      if (!structure) return null;
      const traced = waterNow.peek()?.structures.find(({ id }) => id === structure.id) ?? null;
      const text = structureWords(structure, traced, unitSystem.peek());
      return { key: structure.id, title: structure.name || "Building", text };
    }
    case "gauge":
      return { key: "gauge", title: gauge?.name || "Gauge", text: "Stages are read here." };
    case "source": {
      const name = String(hit.properties.text);
      return { key: `source ${name}`, title: name, text: "Water is followed from here." };
    }
    case "culvert":
    case "culvert-end":
    case "drain": {
      const of = hit.properties.kind === "drain" ? drains : culverts;
      const pipe = of.find(({ id }) => id === hit.properties.id);
      if (!pipe) return null;
      const traced = waterNow.peek()?.pipes.find(({ id }) => id === pipe.id) ?? null;
      const text = pipeStateWords(pipe, traced, unitSystem.peek());
      return { key: pipe.id, title: pipe.name, text };
    }
    case "work-place":
    case "truck-way": {
      const place = workPlaces.find(({ id }) => id === hit.properties.id);
      return place ? { key: place.id, title: place.name, text: WORK_PLACES[place.kind].tip } : null;
    }
    default:
      return null;
  }
}
