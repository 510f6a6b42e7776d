import "./map.css";
import "./mark-label.css";
import { useEffect, useRef } from "preact/hooks";
import { baseMap } from "../live/base-map.ts";
import { mapIsLent } from "../live/buildings/open.ts";
import { ground } from "../live/ground.ts";
import { chosenLine } from "../live/results.ts";
import { tool } from "../live/screen.ts";
import { DrawHint } from "./draw-hint.tsx";
import { isWithoutGraphics } from "./drawable.ts";
import { drawingByKeys } from "./drawing-state.ts";
import { EditNote } from "./edit-note.tsx";
import { FlowMark } from "./flow-mark.tsx";
import { Legend } from "./legend.tsx";
import { LostPicture } from "./lost-picture.tsx";
import { MapControls } from "./map-controls.tsx";
import { PickHint } from "./pick-hint.tsx";
import { ReadingNote } from "./reading-note.tsx";
import { Readout } from "./readout.tsx";
import { ScaleBar } from "./scale-bar.tsx";
import { ShowBox } from "./show-box.tsx";
import { mapElement } from "./the-map.ts";

/** The map, lent to the field views or the view of all buildings while these are open, with what belongs to it: legend, scale, readout and a few controls. */
export function MapRoom() {
  const place = useRef<HTMLDivElement>(null);
  const isLent = mapIsLent.value;
  useEffect(() => {
    if (isLent) return;
    const element = mapElement();
    place.current?.prepend(element);
    return () => element.remove();
  }, [isLent]);
  const { on, credit } = baseMap.value;
  const showBox = tool.value === "move" && chosenLine.value && <ShowBox />;
  if (isWithoutGraphics.value) {
    return (
      <div class="map-room" ref={place}>
        {showBox}
      </div>
    );
  }
  return (
    <div class="map-room" ref={place}>
      <LostPicture />
      {drawingByKeys.value && <div class="map-cross" aria-hidden="true" />}
      <DrawHint />
      <PickHint />
      <ReadingNote />
      {showBox}
      <MapControls />
      <EditNote />
      <div class="map-foot">
        <ScaleBar />
        <FlowMark />
        <Readout />
        {on && credit && <p class="map-credit">{credit}</p>}
      </div>
      {ground.value && <Legend />}
    </div>
  );
}
