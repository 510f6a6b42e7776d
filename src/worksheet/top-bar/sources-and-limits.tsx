import { allDocuments } from "../../../shared/handbook.ts";
import { DISCLAIMER } from "../../../shared/words/cautions.ts";

/** What the figures come from, what they are not, and what the program is built from. */
export function SourcesAndLimits() {
  return (
    <>
      <p>{DISCLAIMER}</p>
      <h3>Sources</h3>
      <dl class="source-list">
        {allDocuments().map(({ key, title }) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{title}</dd>
          </div>
        ))}
      </dl>
      <p class="hint">
        Drystead is open source under the MIT license.{" "}
        <a href="./third-party-notices.md" target="_blank" rel="noreferrer">
          Licenses of the packages it is built from
        </a>
      </p>
    </>
  );
}
