import "./split-edge.css";

/** How much a key moves the edge, and how far it may go: shares of the whole. */
const STEP = 0.02;
const LEAST = 0.15;
const MOST = 0.75;

interface SplitEdgeProps {
  readonly label: string;
  /** Share of the whole that the lower part takes now. */
  readonly share: number;
  /** Where the two parts lie on the page, CSS pixels; null while they are not laid out. */
  readonly extent: () => { readonly top: number; readonly bottom: number } | null;
  /** Null goes back to what it is at first. */
  readonly onShare: (share: number | null) => void;
}

/** The edge between two parts that lie over each other: dragged, moved by arrow keys, put back by a double click or Home. */
export function SplitEdge({ label, share, extent, onShare }: SplitEdgeProps) {
  const move = (to: number) => onShare(Math.min(MOST, Math.max(LEAST, to)));
  const drag = (event: PointerEvent & { readonly currentTarget: HTMLElement }) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    const whole = extent();
    if (whole) move((whole.bottom - event.clientY) / (whole.bottom - whole.top));
  };
  const step = (event: KeyboardEvent) => {
    const to = { ArrowUp: share + STEP, ArrowDown: share - STEP, PageUp: MOST, PageDown: LEAST }[
      event.key
    ];
    if (to !== undefined) move(to);
    else if (event.key === "Home") onShare(null);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a rule cannot be dragged.
    <div
      class="split-edge"
      role="separator"
      tabIndex={0}
      aria-orientation="horizontal"
      aria-label={label}
      aria-valuemin={LEAST * 100}
      aria-valuemax={MOST * 100}
      aria-valuenow={Math.round(share * 100)}
      title={`${label}: drag it, or press the arrow keys; Home puts it back`}
      onPointerDown={(event) => {
        if (event.button === 0) event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={drag}
      onDblClick={() => onShare(null)}
      onKeyDown={step}
    />
  );
}
