import { STANDARD, sectionsOf } from "../../../shared/reaches.ts";
import { typesWords } from "../../../shared/words/levee-types.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** How the levee is built and by whom. */
export function SectionBlock() {
  const chosen = chosenAlternative.value;
  return (
    <Disclosure
      id="section"
      title="Levee type"
      summary={typesWords(chosen ? sectionsOf(chosen) : [STANDARD])}
    >
      <RowBody of="SectionBody" />
    </Disclosure>
  );
}
