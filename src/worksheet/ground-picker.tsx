import { openTerrainFiles } from "../actions.ts";
import { DEMO_SITES, type DemoKey, openDemo } from "../demo.ts";
import { FileButton } from "../ui/file-button.tsx";
import { Icon } from "../ui/icons.tsx";
import { Menu, MenuItem } from "../ui/menu.tsx";
import { startNewPlan } from "./new-plan.ts";

const RASTERS = ".tif,.tiff,.gtiff,.asc,.grd,.txt,.prj,.tfw,.xml,.ovr";

/** Opens rasters from this machine, or one of the sites that come with the tool. */
export function GroundPicker() {
  return (
    <div class="tool-row">
      <FileButton
        label="Elevation raster files"
        accept={RASTERS}
        multiple
        class="tool-button"
        onFiles={(files) => void openTerrainFiles(files)}
      >
        <Icon name="file" /> Open ground files
      </FileButton>
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
