interface HatchesProps {
  readonly id: string;
  /** How many times as coarse as on the planning screen. */
  readonly scale?: number;
}

/** The hatches of the drawings: over the limit, and no ground data. Ids are `{id}-over` and `{id}-hole`. */
export function Hatches({ id, scale = 1 }: HatchesProps) {
  return (
    <defs>
      <pattern
        id={`${id}-over`}
        width="5"
        height="5"
        patternUnits="userSpaceOnUse"
        patternTransform={`rotate(-45) scale(${scale})`}
      >
        <rect class="hatch-paper" width="5" height="5" />
        <rect class="hatch-over" width="5" height="2.8" />
      </pattern>
      <pattern
        id={`${id}-hole`}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform={`rotate(45) scale(${scale})`}
      >
        <rect class="hatch-paper" width="6" height="6" />
        <rect class="hatch-hole" width="6" height="1.4" />
      </pattern>
    </defs>
  );
}
