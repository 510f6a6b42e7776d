import { footWords } from "../../shared/words/sheet.ts";
import { type Piece, type Room, SheetPages } from "./sheet-pages.tsx";
import { type SheetFrame, TitleBlock } from "./title-block.tsx";

export type { PartOfLine, Piece, Room, Rows } from "./sheet-pages.tsx";

interface SheetProps extends SheetFrame {
  /** `Stakes`. */
  readonly name: string;
  /** One word for it: `Stakes` is page `Stakes 2` in a PDF file. */
  readonly short: string;
  /** False while something of it is still being calculated. */
  readonly isWhole?: boolean;
  /** True where a part of it could not be made: it says so, and is not printed from the terminal. */
  readonly hasFailed?: boolean;
  /** False for what stays in the office: without the stage to leave at. */
  readonly forCrew?: boolean;
  /** What is on it, from top to bottom; made from the room of a page where it is to fill it. */
  readonly pieces: readonly Piece[] | ((room: Room) => readonly Piece[]);
}

/**
 * One sheet of a line's printed pages. Each page has title block, Must fix band and foot.
 *
 * A new sheet is a component that returns `<Sheet {...frame} name="Stakes" short="Stakes" pieces={[...]} />`, and a line
 * in `pages-room.tsx`, which gives it its `frame`.
 */
export function Sheet(props: SheetProps) {
  const {
    name,
    short,
    isWhole = true,
    hasFailed = false,
    forCrew = true,
    pieces,
    ...frame
  } = props;
  return (
    <SheetPages
      {...{ name, short, isWhole, hasFailed, pieces }}
      label={frame.label}
      hasNotes={forCrew}
      head={(page, part) => <TitleBlock {...frame} page={page} part={part} />}
      foot={<Foot {...frame} forCrew={forCrew} />}
    />
  );
}

function Foot({ of, forCrew }: SheetFrame & { readonly forCrew: boolean }) {
  const { left, right } = footWords(of.plan, of.system, forCrew);
  return (
    <footer class="sheet-foot">
      <p>{left}</p>
      <p>
        {right[0]}
        <br />
        {right[1]}
      </p>
    </footer>
  );
}
