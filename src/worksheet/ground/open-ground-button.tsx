import { GROUND_FILES } from "../../../shared/raster-files.ts";
import { openTerrainFiles } from "../../live/open-ground.ts";
import { FileButton } from "../../ui/file-button.tsx";
import { Icon } from "../../ui/icons.tsx";

interface OpenGroundButtonProps {
  /** Name for screen readers. */
  readonly label: string;
}

/** Opens elevation data from this machine. */
export function OpenGroundButton({ label }: OpenGroundButtonProps) {
  return (
    <FileButton
      label={label}
      accept={GROUND_FILES}
      multiple
      class="tool-button"
      onFiles={(files) => void openTerrainFiles(files)}
    >
      <Icon name="file" /> Open elevation data files
    </FileButton>
  );
}
