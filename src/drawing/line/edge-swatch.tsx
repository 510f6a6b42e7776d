import "./edge-swatch.css";
import { EDGE_DASHES } from "./reach-shapes.ts";

const WIDTH_PX = 1.8;

/** A piece of levee between the edges that one of the other sections is drawn with. */
export function EdgeSwatch({ pattern }: { readonly pattern: number }) {
  const dashes = EDGE_DASHES[pattern]?.map((each) => each * WIDTH_PX).join(" ");
  return (
    <svg class="edge-swatch" viewBox="0 0 24 10" width="24" height="10" aria-hidden="true">
      <rect class="levee-fill-2" y="1" width="24" height="8" />
      <path d="M0 1h24M0 9h24" stroke-width={WIDTH_PX} stroke-dasharray={dashes} />
    </svg>
  );
}
