import { type ComponentType, createElement } from "preact";
import { useEffect, useState } from "preact/hooks";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import type { UnitSystem } from "../../shared/units.ts";
import type { ProgramPart } from "../../shared/words/refusals/program.ts";
import { FailureText } from "./failure-text.tsx";

interface PartProps<Props> {
  readonly what: ProgramPart;
  readonly load: () => Promise<ComponentType<Props>>;
  readonly props: Props;
  readonly onLeave: () => void;
  readonly system: UnitSystem;
}

/** A part of the page that is fetched when it is first shown. Where that fails: why, another try, and a way back. */
export function Part<Props extends object>({
  what,
  load,
  props,
  onLeave,
  system,
}: PartProps<Props>) {
  const [view, setView] = useState<{ readonly shown: ComponentType<Props> } | null>(null);
  const [failure, setFailure] = useState<Failure | null>(null);
  const fetch = () => {
    setFailure(null);
    loadPart(what, load).then(
      (shown) => setView({ shown }),
      (thrown) => setFailure(asFailure(thrown)),
    );
  };
  useEffect(fetch, [load]);
  if (view) return createElement(view.shown, props);
  return (
    <div class="part" role={failure ? "alert" : "status"}>
      {failure ? (
        <>
          <FailureText failure={failure} system={system} />
          <button type="button" class="tool-button" onClick={fetch}>
            Try again
          </button>
          <button type="button" class="tool-button" onClick={onLeave}>
            Back to the map
          </button>
        </>
      ) : (
        <p>Loading {what} ...</p>
      )}
    </div>
  );
}
