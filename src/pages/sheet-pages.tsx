import type { VNode } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import type { LinePart } from "../../shared/words/must-fix-band.ts";
import { NOTES_TITLE, pageWords } from "../../shared/words/sheet.ts";
import { type Measured, type Placed, paginate } from "./paginate.ts";
import { pageStyle, paper } from "./paper.ts";
import { SteadyRoom } from "./steady-room.ts";

/** Rows that may go on over several pages. */
export interface Rows {
  readonly rows: readonly VNode[];
  /**
   * Draws what stands around the rows of one page: a table with its head, a list. It puts the rows, and nothing else,
   * into an element marked `data-rows`. Head cells need widths in CSS where pages are to agree in their columns.
   */
  readonly around: (rows: readonly VNode[], goesOn: boolean) => VNode;
  /** Names a page after its rows, `from` up to before `to`: "Stakes 0+00 to 4+38". */
  readonly nameOf?: (from: number, to: number) => string;
  /** The part of the line that these rows are for, `from` up to before `to`. */
  readonly partOf?: (from: number, to: number) => LinePart;
}

/** An element that is for a part of the line. */
export interface PartOfLine {
  readonly element: VNode;
  readonly part: LinePart;
}

/** A piece of a sheet: an element that stays on one page, or rows. */
export type Piece = VNode | PartOfLine | Rows;

/** Room between the title block and the foot of a page, millimetres. */
export interface Room {
  readonly widthMm: number;
  readonly heightMm: number;
}

interface SheetPagesProps {
  /** `Sheet 2 of 5`, or `Office pages`. */
  readonly label: string;
  /** `Stakes`. */
  readonly name: string;
  /** One word for it: `Stakes` is page `Stakes 2` in a PDF file. */
  readonly short: string;
  /** False while something of it is still being calculated. */
  readonly isWhole?: boolean;
  /** True where a part of it could not be made: it says so, and is not printed from the terminal. */
  readonly hasFailed?: boolean;
  /** Whether what is left of the last page is ruled for notes. */
  readonly hasNotes?: boolean;
  /** What is on it, from top to bottom; made from the room of a page where it is to fill it. */
  readonly pieces: readonly Piece[] | ((room: Room) => readonly Piece[]);
  /** What stands on top of each page, which is named so. */
  readonly head: (page: string, part: LinePart | null) => VNode;
  readonly foot: VNode;
}

/** Left free at the foot, since a printer's words may run a little wider than the screen's, millimetres. */
const SPARE_MM = 1.5;
const FIRST_ROOM: Room = { widthMm: 190.5, heightMm: 205 };

/**
 * Pieces laid out on as many pages as they take, each with its head, which says which page it is, and its foot. Pieces
 * are measured where they stand: no heights are declared. An element must not be higher than a page; what may be is
 * given as {@link Rows}. `data-laid` says `yes` once the pages are as they are printed, `failed` where a part could not be
 * made. What is left of the last page is ruled for notes, where it is worth it.
 */
export function SheetPages({
  label,
  name,
  short,
  isWhole = true,
  hasFailed = false,
  hasNotes = true,
  pieces: given,
  head,
  foot,
}: SheetPagesProps) {
  const sheet = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState(FIRST_ROOM);
  const pieces = typeof given === "function" ? given(room) : given;
  const [pages, setPages] = useState<readonly (readonly Placed[])[]>([]);
  const shown = holds(pages, pieces) ? pages : [pieces.map(whole)];
  const steady = useRef(new SteadyRoom()).current;
  useLayoutEffect(() => {
    const element = sheet.current;
    if (!element) return;
    const layOut = () => {
      const { roomMm: measuredMm, mmPerPx } = roomIn(element);
      const roomMm = steady.next(measuredMm, `${paper.value} ${pieces.map(rowCount)}`);
      setRoom((was) => (near(was.heightMm, roomMm) ? was : { ...was, heightMm: roomMm }));
      const next = paginate(measured(element, pieces), (roomMm - SPARE_MM) / mmPerPx);
      const isLaid = isWhole && near(room.heightMm, roomMm) && isSame(pages, next);
      element.dataset.laid = hasFailed ? "failed" : isLaid ? "yes" : "no";
      setPages((was) => (isSame(was, next) ? was : next));
    };
    const observer = new ResizeObserver(layOut);
    for (const part of element.querySelectorAll(".sheet-part")) observer.observe(part);
    layOut();
    return () => observer.disconnect();
  });
  return (
    <div class="sheet-pages" ref={sheet}>
      {shown.map((parts, index) => {
        const page = pageWords(pageName(name, pieces, parts), index + 1, shown.length);
        return (
          <section
            key={index}
            class="sheet-page"
            aria-label={`${label}: ${page}`}
            data-page-label={`${short} ${index + 1}`}
            style={pageStyle(paper.value)}
          >
            {head(page, partOf(pieces, parts))}
            <div class="sheet-body">
              {parts.map(({ piece, from, to }) => (
                <div key={`${piece} ${from}`} class="sheet-part" data-piece={piece}>
                  {drawn(pieces[piece]!, from, to)}
                </div>
              ))}
              {hasNotes && index === shown.length - 1 && (
                <div class="sheet-notes">
                  <p>{NOTES_TITLE}</p>
                </div>
              )}
            </div>
            {foot}
          </section>
        );
      })}
    </div>
  );
}

function isRows(piece: Piece): piece is Rows {
  return "rows" in piece;
}

function drawn(piece: Piece, from: number, to: number): VNode {
  if (isRows(piece)) return piece.around(piece.rows.slice(from, to), from > 0);
  return "element" in piece ? piece.element : piece;
}

function whole(piece: Piece, index: number): Placed {
  return { piece: index, from: 0, to: rowCount(piece) };
}

function rowCount(piece: Piece): number {
  return isRows(piece) ? piece.rows.length : 0;
}

/** Whether pages laid out before still hold all of these pieces. */
function holds(pages: readonly (readonly Placed[])[], pieces: readonly Piece[]): boolean {
  const placed = pages.flat();
  return (
    pieces.every((piece, index) => {
      const own = placed.filter((each) => each.piece === index);
      return own.length > 0 && own.at(-1)!.to === rowCount(piece);
    }) && placed.every(({ piece }) => piece < pieces.length)
  );
}

function pageName(name: string, pieces: readonly Piece[], parts: readonly Placed[]): string {
  for (const { piece, from, to } of parts) {
    const each = pieces[piece]!;
    if (isRows(each) && each.nameOf && to > from) return each.nameOf(from, to);
  }
  return name;
}

/** The part of the line that a page is for, where one of its pieces says it. */
function partOf(pieces: readonly Piece[], placed: readonly Placed[]): LinePart | null {
  for (const { piece, from, to } of placed) {
    const each = pieces[piece]!;
    if ("part" in each) return each.part;
    if (isRows(each) && each.partOf && to > from) return each.partOf(from, to);
  }
  return null;
}

/** The least room that a page has, and what a pixel as measured is on paper, which a small screen makes smaller. */
function roomIn(sheet: HTMLElement): { roomMm: number; mmPerPx: number } {
  const page = sheet.querySelector<HTMLElement>(".sheet-page")!;
  const mmPerPx = Number.parseFloat(page.style.width) / page.getBoundingClientRect().width;
  const bodies = [...sheet.querySelectorAll(".sheet-body")];
  const leastPx = Math.min(...bodies.map((body) => body.getBoundingClientRect().height));
  return { roomMm: leastPx * mmPerPx, mmPerPx };
}

function measured(sheet: HTMLElement, pieces: readonly Piece[]): Measured[] {
  return pieces.map((_, index) => {
    const parts = [...sheet.querySelectorAll(`.sheet-part[data-piece="${index}"]`)];
    const rows = parts.map((part) =>
      [...part.querySelectorAll("[data-rows] > *")].map(
        (row) => row.getBoundingClientRect().height,
      ),
    );
    const arounds = parts.map(
      (part, i) => part.getBoundingClientRect().height - rows[i]!.reduce((a, b) => a + b, 0),
    );
    return { aroundPx: Math.max(0, ...arounds), rowsPx: rows.flat() };
  });
}

function near(a: number, b: number): boolean {
  return Math.abs(a - b) < 0.3;
}

function isSame(a: readonly (readonly Placed[])[], b: readonly (readonly Placed[])[]): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
