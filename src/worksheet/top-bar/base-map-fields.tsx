import { useState } from "preact/hooks";
import type { Failure } from "../../../shared/failure.ts";
import { baseMap, readBaseAddress, setBaseMap } from "../../live/base-map.ts";
import { unitSystem } from "../../live/screen.ts";
import { FailureText } from "../../ui/failure-text.tsx";
import { TextField } from "../../ui/text-field.tsx";

/** A picture map under the ground, by the address the person gives. Off unless switched on. */
export function BaseMapFields() {
  const [failure, setFailure] = useState<Failure | null>(null);
  const { address, credit, on } = baseMap.value;
  const take = (text: string) => {
    const read = readBaseAddress(text);
    setFailure(read.ok ? null : read.failure);
    if (read.ok) setBaseMap({ ...baseMap.value, address: read.value });
  };
  return (
    <>
      <p class="hint">
        Optional. While it is on, this page gets pictures of the place you look at from the address
        below. Nothing else leaves this machine.
      </p>
      <TextField
        label="Tile address"
        placeholder="https://…/{z}/{x}/{y}.png"
        maxLength={500}
        value={address}
        onText={take}
      />
      {failure && (
        <p class="field-why" role="alert">
          <FailureText failure={failure} system={unitSystem.value} />
        </p>
      )}
      <TextField
        label="Credit its owner requires"
        value={credit}
        onText={(text) => setBaseMap({ ...baseMap.value, credit: text })}
      />
      <label class="check-line">
        <input
          type="checkbox"
          checked={on}
          disabled={address === ""}
          onChange={(event) => setBaseMap({ ...baseMap.value, on: event.currentTarget.checked })}
        />
        Show it under the relief
      </label>
    </>
  );
}
