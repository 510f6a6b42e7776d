import { DEMO_SITES, type DemoKey, openDemo } from "../../live/demo.ts";
import { startNewPlan } from "../../live/new-plan.ts";
import { Icon } from "../../ui/icons.tsx";
import { Menu, MenuItem } from "../../ui/menu.tsx";
import { OpenGroundButton } from "./open-ground-button.tsx";

/** Opens rasters from this machine, or one of the sites that come with the tool. */
export function GroundPicker() {
  return (
    <div class="tool-row">
      <OpenGroundButton label="Elevation data files" />
      <Menu label="Sites that come with the tool" icon="building" text="Examples">
        {DEMO_SITES.map((site) => (
          <MenuItem key={site.key} icon="file" onChoose={() => void openDemo(site.key as DemoKey)}>
            {site.label}
          </MenuItem>
        ))}
      </Menu>
      <button type="button" class="tool-button" onClick={startNewPlan}>
        <Icon name="plus" /> New plan
      </button>
    </div>
  );
}
