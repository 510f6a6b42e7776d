import { computed } from "@preact/signals";
import type { Map as MapLibreMap } from "maplibre-gl";
import { asFailure } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import { chosenAlternative } from "../document/chosen.ts";
import { tell } from "../document/notices.ts";
import { plan } from "../document/store.ts";
import { unitSystem } from "../live/screen.ts";
import { differenceShown } from "../live/search/difference.ts";
import { foundForOf, foundNow } from "../live/search/found.ts";
import { sidewaysNow } from "../live/search/why-here.ts";
import { colours } from "./colours-now.ts";
import { onMap } from "./drawable.ts";
import { installFoundLayers } from "./found-layers.ts";
import { lineMarks, savingArrows } from "./found-shapes.ts";
import { NOTHING, show } from "./sources.ts";
import { restingView } from "./view.ts";

const difference = () => import("./found-difference.ts");

/** Keeps on the map what a search found beside its line: differences, free ground, pins, what a move saves. */
export function keepFound(map: MapLibreMap): void {
  const one = computed(() => alternativeOf(foundNow.value?.ids[0]));
  const other = computed(() => alternativeOf(foundNow.value?.againstId));
  const metresPerPx = computed(() => restingView.value.metresPerPx);

  onMap([map], () => installFoundLayers(map, colours.value));
  onMap([map], () => {
    const [found, against] = [one.value, other.value];
    const isShown = differenceShown.value && found && against && foundNow.value?.ids.length === 1;
    show(map, "difference", NOTHING);
    if (!isShown) return;
    loadPart("the comparison of two lines", difference).then(
      ({ differenceShapes }) => {
        if (one.peek() !== found || other.peek() !== against || !differenceShown.peek()) return;
        show(map, "difference", differenceShapes(found, against));
      },
      (thrown) => tell("error", asFailure(thrown)),
    );
  });
  onMap([map], () => {
    const result = foundNow.value;
    const chosen = chosenAlternative.value;
    const k = result?.ids.indexOf(chosen?.id ?? "") ?? -1;
    const isAsFound = chosen?.kind === "line" && foundForOf(chosen) !== null;
    const free = isAsFound ? (result?.lines[k]?.free ?? []) : [];
    show(map, "found", lineMarks(free, chosen));
  });
  onMap([map], () => {
    const costs = sidewaysNow.value;
    const arrows = costs ? savingArrows(costs, metresPerPx.value, unitSystem.value) : NOTHING;
    show(map, "sideways", arrows);
  });
}

function alternativeOf(id: string | null | undefined) {
  return plan.value.alignments.find((each) => each.id === id) ?? null;
}
