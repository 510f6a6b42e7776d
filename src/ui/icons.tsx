const PATHS = {
  undo: "M6 4 2.8 7.2 6 10.4M3 7.2h6.2a3.6 3.6 0 0 1 0 7.2H6.5",
  redo: "M10 4l3.2 3.2L10 10.4M13 7.2H6.8a3.6 3.6 0 0 0 0 7.2h2.7",
  open: "M1.8 12.8V3.5h4l1.5 1.8h5.9v2M1.8 12.8l2-5.5h11l-2 5.5z",
  save: "M8 1.8v8M4.8 6.8 8 10l3.2-3.2M2.5 12v2h11v-2",
  plus: "M8 3v10M3 8h10",
  copy: "M5.5 5.5h8v8h-8zM3 10.5h-.5v-8h8V3",
  trash: "M3 4.5h10M6.5 4.5v-2h3v2M4.5 4.5l.6 9h5.8l.6-9",
  up: "M8 13V3.5M4 7.2 8 3.2l4 4",
  down: "M8 3v9.5M4 8.8l4 4 4-4",
  left: "M13 8H3.5M7.2 4l-4 4 4 4",
  right: "M3 8h9.5M8.8 4l4 4-4 4",
  close: "M4 4l8 8M12 4l-8 8",
  more: "M3.5 8h.01M8 8h.01M12.5 8h.01",
  reset: "M3.5 8a4.7 4.7 0 1 0 1.5-3.4L3 6.5M3 3v3.5h3.5",
  ring: "M4.2 4.5 8.5 2.5l4.5 3-.8 5.5-5 2.5-4.2-4z",
  find: "M2.5 6.5 6 3.2l4.2.8 1.6 3.6M2.5 6.5l.6 4 3.2 1.9M9.2 9.2a2.2 2.2 0 1 1 3.1 3.1 2.2 2.2 0 0 1-3.1-3.1M12.4 12.4l2 2",
  improve: "M2 12.5 6.5 9l3 1.5L14 4M10.5 3.5 14 4l.3 3.5",
  pin: "M5.5 2.5h5M6.2 2.5v4L4 9h8L9.8 6.5v-4M8 9v5",
  line: "M2 12.5 6 6l4.5 2.5L14 3",
  building: "M2.5 13.5V7L8 2.8 13.5 7v6.5zM6.5 13.5v-4h3v4",
  "no-go": "M8 2.2a5.8 5.8 0 1 1 0 11.6A5.8 5.8 0 0 1 8 2.2M4 12 12 4",
  arrow: "M2.5 10c2-2.5 4 1.5 6-1s3.5-.5 5-2.5M11 6h2.7v2.7",
  gauge: "M8 2v12M8 4h3M8 6.5h2M8 9h3M8 11.5h2M5 14h6",
  source: "M8 2.2c2.6 3.2 4 5.3 4 7.2a4 4 0 0 1-8 0c0-1.9 1.4-4 4-7.2M6.3 9.8A1.8 1.8 0 0 0 8 11.5",
  culvert: "M1.8 6h12.4M1.8 10h12.4M4 6v4M12 6v4M3 12.5h10",
  drain: "M8 2.5a5.5 5.5 0 1 1 0 11 5.5 5.5 0 0 1 0-11M5.5 4.5v7M8 3.5v9M10.5 4.5v7",
  pile: "M1.8 13C4 8.5 5.5 5 8 5s4 3.5 6.2 8zM6.5 10h.01M8.3 8h.01M9.8 10.4h.01",
  pumps: "M2.5 2.5h11v11h-11zM8 6h5.5M8 6a2.6 2.6 0 1 0 .01 0",
  file: "M4 1.8h5.5l3 3v9.4H4zM9.5 1.8v3h3",
  setback: "M6 6h4v4H6zM2.5 2.5h11v11h-11z",
  chevron: "M6 3.5 10.5 8 6 12.5",
  print: "M4.5 6V2h7v4M4.5 11.5h-2V6h11v5.5h-2M4.5 9.5h7V14h-7z",
  all: "M3 5.5 8 3l5 2.5L8 8zM3 8.2 8 10.7l5-2.5M3 10.9 8 13.4l5-2.5",
  one: "M3 8 8 5.5 13 8l-5 2.5z",
  compare: "M2.5 3.5h11v9h-11zM2.5 6.5h11M2.5 9.5h11M6.5 3.5v9",
  keys: "M1.8 4.5h12.4v7.5H1.8zM4.5 7h.01M8 7h.01M11.5 7h.01M5 9.7h6",
} as const;

export type IconName = keyof typeof PATHS;

/** One of our own line icons, 16 px, in the colour of the text beside it. Decorative: the control carries the name. */
export function Icon({ name }: { readonly name: IconName }) {
  return (
    <svg class="icon" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <path d={PATHS[name]} />
    </svg>
  );
}

/** The mark: a small house kept dry under the arc of a levee. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 22" width="32" height="22" aria-hidden="true">
      <path class="mark-water" d="M1 15.5h6.5M24.5 15.5H31" />
      <path class="mark-levee" d="M3 19.5c6.5 0 6.5-15 13-15s6.5 15 13 15" />
      <path class="mark-house" d="M11.5 19.5v-5.7L16 10l4.5 3.8v5.7z" />
    </svg>
  );
}
