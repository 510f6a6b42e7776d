import { useRef, useState } from "preact/hooks";
import type { Alignment } from "../../../shared/plan.ts";
import { lengthFrom, lengthUnit } from "../../../shared/units.ts";
import { cornerFrame, fewestCorners, nudgeCorner } from "../../document/edits/corners.ts";
import { endGesture, plan } from "../../document/store.ts";
import { unitSystem } from "../../live/screen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { CornerRow } from "./corner-row.tsx";
import { NudgePad } from "./nudge-pad.tsx";

export type CornerShown = "offsets" | "degrees";

/** Every corner of the chosen alternative, to type, to nudge, to insert and to delete, without a mouse. */
export function CornersTable({ alternative }: { alternative: Alignment }) {
  const [picked, setPicked] = useState(0);
  const [shown, setShown] = useState<CornerShown>("offsets");
  const gesture = useRef(0);
  const system = unitSystem.value;
  const unit = lengthUnit(system);
  const frame = cornerFrame(plan.value, alternative);
  const count = alternative.corners.length;
  const at = Math.min(picked, count - 1);
  const pick = (index: number) => {
    gesture.current += 1;
    endGesture();
    setPicked(index);
  };
  const nudge = (east: number, north: number) =>
    nudgeCorner(
      frame,
      alternative,
      at,
      { eastM: lengthFrom(east, system), northM: lengthFrom(north, system) },
      `nudge-${gesture.current}`,
    );
  return (
    <Disclosure id="corners" title="Corners" level="part" summary={`${count}`}>
      <fieldset class="choice">
        <legend class="unseen">How corners are given</legend>
        {(["offsets", "degrees"] as const).map((each) => (
          <label key={each}>
            <input
              type="radio"
              name="corner-shown"
              checked={shown === each}
              onChange={() => setShown(each)}
            />
            {each === "offsets" ? `Offsets, ${unit}` : "Longitude, latitude"}
          </label>
        ))}
      </fieldset>
      <div class="table-scroll">
        <table class="corners">
          <caption>
            {shown === "offsets" ? `East and north of ${frame.from}` : "WGS 84, degrees"}
          </caption>
          <thead>
            <tr>
              <th scope="col">Corner</th>
              <th scope="col">{shown === "offsets" ? "East" : "Longitude"}</th>
              <th scope="col">{shown === "offsets" ? "North" : "Latitude"}</th>
              <th scope="col">
                <span class="unseen">Pin, insert, delete</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {alternative.corners.map((corner, index) => (
              <CornerRow
                key={`${alternative.id} ${index}`}
                alternative={alternative}
                corner={corner}
                index={index}
                frame={frame}
                shown={shown}
                isPicked={index === at}
                isLast={alternative.kind === "line" && index === count - 1}
                mayDelete={count > fewestCorners(alternative.kind)}
                onPick={() => pick(index)}
                onNudge={nudge}
              />
            ))}
          </tbody>
        </table>
      </div>
      <NudgePad corner={at + 1} onNudge={nudge} />
    </Disclosure>
  );
}
