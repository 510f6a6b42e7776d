import { heightOf, type PlacedWords, type Words, widthOf } from "./plan-labels.ts";

/** The words of one label in their place, with the line to their point where they are away from it. */
export function WordsDrawing({ placed }: { readonly placed: PlacedWords }) {
  const { label, leader } = placed;
  return (
    <g>
      {leader && (
        <path
          class="plan-leader"
          d={`M${leader.map(([x, y]) => `${fixed(x)} ${fixed(y)}`).join("L")}`}
        />
      )}
      {label.layout === "beside" ? <Beside placed={placed} /> : <Stack placed={placed} />}
    </g>
  );
}

/** Where the baseline of type of a height is, from its top. */
const BASELINE = 0.8;

function Stack({ placed: { label, box } }: { readonly placed: PlacedWords }) {
  const x = (box.left + box.right) / 2;
  let top = box.top;
  return (
    <>
      {label.words.map((words) => {
        const y = top;
        top += heightOf(words.look);
        return <Line key={words.text} words={words} x={x} top={y} anchor="middle" />;
      })}
    </>
  );
}

/** A big figure on the side of its point, and the others in lines beyond it. */
function Beside({ placed: { label, box } }: { readonly placed: PlacedWords }) {
  const [big, ...others] = label.words;
  const isRight = label.away[0] >= 0;
  const anchor = isRight ? "start" : "end";
  const bigX = isRight ? box.left : box.right;
  const restX = bigX + (isRight ? 1 : -1) * (widthOf(big!) + 1);
  const middle = (box.top + box.bottom) / 2;
  let top = middle - others.reduce((sum, { look }) => sum + heightOf(look), 0) / 2;
  return (
    <>
      <Line words={big!} x={bigX} top={middle - heightOf("big") / 2} anchor={anchor} />
      {others.map((words) => {
        const y = top;
        top += heightOf(words.look);
        return <Line key={words.text} words={words} x={restX} top={y} anchor={anchor} />;
      })}
    </>
  );
}

interface LineProps {
  readonly words: Words;
  readonly x: number;
  readonly top: number;
  readonly anchor: "start" | "middle" | "end";
}

function Line({ words, x, top, anchor }: LineProps) {
  const { text, look, isOver } = words;
  if (look === "flag") return <Flag words={words} x={x} top={top} anchor={anchor} />;
  return (
    <text
      class={`plan-label plan-${look}`}
      data-over={isOver === true}
      x={fixed(x)}
      y={fixed(top + heightOf(look) * BASELINE)}
      text-anchor={anchor}
    >
      {text}
    </text>
  );
}

function Flag({ words, x, top, anchor }: LineProps) {
  const width = widthOf(words);
  const left = anchor === "start" ? x : anchor === "end" ? x - width : x - width / 2;
  return (
    <>
      <rect
        class="plan-flag"
        x={fixed(left)}
        y={fixed(top + 0.3)}
        width={fixed(width)}
        height="4"
      />
      <text
        class="plan-flag-words"
        x={fixed(left + width / 2)}
        y={fixed(top + 3.3)}
        text-anchor="middle"
      >
        {words.text}
      </text>
    </>
  );
}

function fixed(mm: number): string {
  return mm.toFixed(2);
}
