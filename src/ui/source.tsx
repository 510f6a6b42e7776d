import { useId, useRef } from "preact/hooks";
import { placeBeside } from "./place-beside.ts";

interface SourceProps {
  /** What the source is of, for the button's name. */
  readonly about: string;
  readonly lines: readonly (string | null)[];
}

/** A small mark beside a figure that opens where it comes from and what else is published. */
export function Source({ about, lines }: SourceProps) {
  const id = useId();
  const button = useRef<HTMLButtonElement>(null);
  const said = lines.filter((line) => line !== null);
  return (
    <>
      <button
        ref={button}
        type="button"
        class="source-mark"
        aria-label={`Where ${about} comes from`}
        popovertarget={id}
      >
        ?
      </button>
      <div
        id={id}
        class="makeup"
        popover="auto"
        onToggle={(event) => {
          if (event.newState === "open" && button.current) {
            placeBeside(event.currentTarget, button.current);
          }
        }}
      >
        {said.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </div>
    </>
  );
}
