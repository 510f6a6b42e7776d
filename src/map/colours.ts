/** Colours of the map as the style sheet gives them for the theme now set; CSS colour texts. */
export interface MapColours {
  readonly paper: string;
  readonly panel: string;
  readonly ink: string;
  readonly secondary: string;
  /** Tint of the water; darker at night than the water of drawings. */
  readonly water: string;
  readonly waterText: string;
  /** By height class 0..3. */
  readonly levee: readonly [string, string, string, string];
  readonly over: string;
  readonly landside: string;
  readonly act: string;
  readonly hole: string;
  readonly groundLow: string;
  readonly groundHigh: string;
  readonly shadow: string;
  readonly sunlit: string;
  readonly contour: string;
  readonly contourText: string;
}

/** Reads the custom properties of the page; call again after the theme has changed. */
export function readColours(): MapColours {
  const style = getComputedStyle(document.documentElement);
  const of = (name: string) => style.getPropertyValue(name).trim() || "#808080";
  return {
    paper: of("--paper"),
    panel: of("--panel"),
    ink: of("--ink"),
    secondary: of("--secondary"),
    water: of("--map-water"),
    waterText: of("--water-text"),
    levee: [of("--levee-1"), of("--levee-2"), of("--levee-3"), of("--levee-4")],
    over: of("--over"),
    landside: of("--landside"),
    act: of("--act"),
    hole: of("--hole"),
    groundLow: of("--map-ground-low"),
    groundHigh: of("--map-ground-high"),
    shadow: of("--map-shadow"),
    sunlit: of("--map-sunlit"),
    contour: of("--map-contour"),
    contourText: of("--map-contour-text"),
  };
}

/** A six-digit hexadecimal colour with an opacity 0..1, as `rgba(...)`. */
export function faded(hex: string, opacity: number): string {
  const [red, green, blue] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
  return `rgba(${red}, ${green}, ${blue}, ${opacity})`;
}
