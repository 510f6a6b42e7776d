import { useId, useState } from "preact/hooks";
import type { Failure } from "../../../shared/failure.ts";
import { readRasterAddress } from "../../../shared/raster-address.ts";
import { groundsOpening } from "../../live/ground.ts";
import { openAddress } from "../../live/open-address.ts";
import { unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import "./address-field.css";

/** Elevation data at a web address: nothing is asked there before Open is pressed, and the host is named before. */
export function AddressField() {
  const id = useId();
  const [typed, setTyped] = useState("");
  const [failure, setFailure] = useState<Failure | null>(null);
  const read = readRasterAddress(typed);
  const open = async () => {
    setFailure(null);
    const refused = await openAddress(typed);
    setFailure(refused);
    if (!refused) setTyped("");
  };
  return (
    <form
      class="address-field"
      onSubmit={(event) => {
        event.preventDefault();
        void open();
      }}
    >
      <label for={id}>Or a web address of a cloud-optimized GeoTIFF</label>
      <div class="address-row">
        <input
          id={id}
          type="text"
          inputMode="url"
          autocomplete="off"
          spellcheck={false}
          maxLength={2000}
          placeholder="https://host.example/dem.tif"
          value={typed}
          aria-invalid={failure !== null}
          aria-describedby={`${id}-what`}
          onInput={(event) => {
            setTyped(event.currentTarget.value);
            setFailure(null);
          }}
        />
        <button
          type="submit"
          class="tool-button"
          disabled={typed.trim() === "" || groundsOpening.value > 0}
        >
          Open address
        </button>
      </div>
      <p id={`${id}-what`} class="hint">
        {read.ok
          ? `Open reads the parts that are needed from ${read.value.host}, and from no other host.`
          : "Its parts are read as they are needed. Nothing is read before you press Open."}
      </p>
      {failure && (
        <p class="field-why" role="alert">
          <FailureText failure={failure} system={unitSystem.value} />
        </p>
      )}
    </form>
  );
}
