import { checksShort } from "../../../shared/words/check-list.ts";
import { chosenLine, sizingFailure } from "../../live/results.ts";
import { chosenChecks, waterNow } from "../../live/water-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** Every finding with what to do, and the cautions that apply to every line. */
export function ChecksBlock() {
  const isTraced = waterNow.value !== null;
  const unsized = sizingFailure.value ? "not known" : "needs a line";
  return (
    <Disclosure
      id="checks"
      title="All checks"
      summary={chosenLine.value ? checksShort(chosenChecks.value, isTraced) : unsized}
    >
      <RowBody of="ChecksBody" />
    </Disclosure>
  );
}
