import { signal } from "@preact/signals";
import type { VNode } from "preact";
import type { SizedLine } from "../../shared/sizing-types.ts";
import { overtopsButForGap } from "../../shared/words/ground-gap.ts";
import { recall, remember } from "../browser/remember.ts";
import { chosenId } from "../document/chosen.ts";
import { CompareTable } from "../drawing/compare-table.tsx";
import { ReachTable } from "../drawing/reach-table.tsx";
import { mustFixOn, tracedLine, tracedNow } from "../live/water-now.ts";
import { checkPieces } from "./checks-part.tsx";
import { forecastPieces } from "./forecast-part.tsx";
import { GivenPart } from "./given-part.tsx";
import { MapFigure, type MapForPages } from "./map-figure.tsx";
import { QuantitiesPart } from "./quantities-part.tsx";
import { type Piece, type Room, Sheet } from "./sheet.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** What the office prints beside the crew's sheets, as its boxes are named. */
const PARTS = [
  ...(["Checks and sources", "Compare", "Quantities", "Forecast"] as const),
  "Map and elevation data",
] as const;
type Part = (typeof PARTS)[number];

const KEY = "drystead.office-pages";
/** Room that the facts take of a page with the map, millimetres. */
const BESIDE_MAP_MM = 50;

/** What is ticked, remembered on this machine: nothing at first. */
const ticked = signal<readonly Part[]>(
  PARTS.filter((part) => recall(KEY, "").split(";").includes(part)),
);

/** A box for each part of the office's pages: only what is ticked is shown and printed. */
export function OfficeChoice() {
  return (
    <fieldset class="office-choice">
      <legend>Office pages</legend>
      {PARTS.map((part) => (
        <label key={part}>
          <input
            type="checkbox"
            checked={ticked.value.includes(part)}
            onChange={(event) => tick(part, event.currentTarget.checked)}
          />
          {part}
        </label>
      ))}
    </fieldset>
  );
}

function tick(part: Part, isOn: boolean): void {
  ticked.value = PARTS.filter((each) => (each === part ? isOn : ticked.value.includes(each)));
  remember(KEY, ticked.value.join(";"));
}

interface OfficeSheetProps extends SheetFrame {
  readonly results: readonly SizedLine[];
  readonly map: MapForPages;
}

/** For the office: the parts that are ticked; nothing where none is. */
export function OfficeSheet({ results, map, ...frame }: OfficeSheetProps) {
  const parts = PARTS.filter((part) => ticked.value.includes(part));
  if (parts.length === 0) return null;
  const { of } = frame;
  const piecesOf: Readonly<Record<Part, (room: Room) => readonly Piece[]>> = {
    "Checks and sources": () => {
      const overtops =
        tracedLine.value &&
        overtopsButForGap(tracedLine.value, of.line, of.plan, of.system, mustFixOn(of.line));
      return checkPieces(of.checks, overtops, of.system);
    },
    Compare: () => comparePieces(frame, results),
    Quantities: () => [<QuantitiesPart of={of} />, ...reachPieces(frame)],
    Forecast: ({ widthMm }) => forecastPieces(of, widthMm),
    "Map and elevation data": ({ heightMm }) => [
      <GivenPart of={of} ground={frame.ground} />,
      <MapFigure map={map} heightMm={heightMm - BESIDE_MAP_MM} />,
    ],
  };
  return (
    <Sheet
      {...frame}
      name={parts.join(", ")}
      short="Office"
      forCrew={false}
      pieces={(room) => parts.flatMap((part) => piecesOf[part](room))}
    />
  );
}

function comparePieces({ of }: SheetFrame, results: readonly SizedLine[]): VNode[] {
  if (results.length < 2) return [];
  return [
    <section aria-label="Compare">
      <h2>Compare</h2>
      <CompareTable
        plan={of.plan}
        mustFixOn={mustFixOn}
        lines={results}
        chosen={chosenId.value}
        system={of.system}
        traced={tracedNow.value}
      />
    </section>,
  ];
}

function reachPieces({ of }: SheetFrame): VNode[] {
  if (of.line.reaches.length < 2) return [];
  return [
    <section aria-label="Reaches">
      <h2>Reaches</h2>
      <ReachTable line={of.line} system={of.system} />
    </section>,
  ];
}
