import { type PaperName, paper, setPaper } from "./paper.ts";

const PAPERS: readonly PaperName[] = ["A4", "Letter"];

/** The paper that pages are laid out for. */
export function PaperChoice() {
  return (
    <fieldset class="choice">
      <legend class="unseen">Paper</legend>
      {PAPERS.map((each) => (
        <label key={each}>
          <input
            type="radio"
            name="paper"
            checked={paper.value === each}
            onChange={() => setPaper(each)}
          />
          {each}
        </label>
      ))}
    </fieldset>
  );
}
