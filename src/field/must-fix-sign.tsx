import { useId } from "preact/hooks";
import { Hatches } from "../drawing/hatches.tsx";

/** The hatch of a Must fix, beside its words. */
export function MustFixSign() {
  const id = useId();
  return (
    <svg class="crew-sign" width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <Hatches id={id} />
      <rect x="1" y="1" width="18" height="18" fill={`url(#${id}-over)`} />
    </svg>
  );
}
