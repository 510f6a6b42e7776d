import { useId } from "preact/hooks";
import {
  bagsWords,
  differenceWords,
  type HandLine,
  handLines,
  handTitle,
  LESSON,
  notShownWords,
  overWords,
  programWords,
} from "../../shared/words/lesson.ts";
import { Hatches } from "../drawing/hatches.tsx";
import type { Shown } from "./shown.ts";

interface HandPanelProps extends Shown {
  readonly asks: "whole-line" | "per-length";
}

/** The calculation as it is done on paper, and what the program makes of the same levee. */
export function HandPanel({ asks, ...shown }: HandPanelProps) {
  const { teaching, shape, before, isShown } = shown;
  const { system } = teaching;
  const over = isShown ? overWords(shape, system) : null;
  const title = handTitle(shape.choice.stationM, system);
  return (
    <section class="lesson-panel lesson-hand" aria-label={title}>
      <table>
        <caption class="unseen">{title}</caption>
        <thead>
          <tr>
            <th colSpan={3} scope="colgroup">
              {title}
            </th>
            <th scope="col">{before && LESSON.before}</th>
          </tr>
        </thead>
        <tbody>
          {handLines(teaching, shape, before).map((line) => (
            <Row key={line.name} line={line} isShown={isShown || line.isGiven} />
          ))}
        </tbody>
      </table>
      <div class="lesson-over" role="status">
        {over && (
          <>
            <OverSwatch /> {over}
          </>
        )}
      </div>
      <div class="lesson-program">
        <strong class={isShown ? undefined : "lesson-unknown"}>
          {isShown ? bagsWords(shape.bagsPerM, system) : LESSON.unknown}
        </strong>
        <p>
          <b>{isShown ? programWords(system) : LESSON.byProgram}</b>
          <br />
          {isShown ? differenceWords(teaching, shape) : notShownWords(asks, system)}
        </p>
      </div>
    </section>
  );
}

function Row({ line, isShown }: { readonly line: HandLine; readonly isShown: boolean }) {
  return (
    <tr class={line.isMain ? "lesson-main" : undefined}>
      <th scope="row">{line.name}</th>
      {isShown ? (
        <>
          <td>{line.working} =</td>
          <td class="lesson-result">
            <b>{line.result}</b>
          </td>
        </>
      ) : (
        <td colSpan={2} class="lesson-unknown">
          {LESSON.unknown}
        </td>
      )}
      <td>{line.before}</td>
    </tr>
  );
}

function OverSwatch() {
  const id = useId();
  return (
    <svg class="lesson-over-swatch" viewBox="0 0 16 16" aria-hidden="true">
      <Hatches id={id} />
      <rect x="0.5" y="0.5" width="15" height="15" fill={`url(#${id}-over)`} />
    </svg>
  );
}
