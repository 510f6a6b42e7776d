import { ground } from "../../live/ground.ts";
import { ToolButton } from "../tool-button.tsx";

/** The drawing tools of the line and of the site round it. */
export function LineTools() {
  const noGround = ground.value === null;
  return (
    <fieldset class="tool-row" aria-label="Draw on the map">
      <ToolButton tool="draw-ring" icon="ring" disabled={noGround}>
        Ring
      </ToolButton>
      <ToolButton tool="draw-line" icon="line" disabled={noGround}>
        Tied-in line
      </ToolButton>
      <ToolButton tool="draw-no-go" icon="no-go" disabled={noGround}>
        No-go area
      </ToolButton>
    </fieldset>
  );
}
