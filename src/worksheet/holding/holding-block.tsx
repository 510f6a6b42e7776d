import "./holding.css";
import { holdingOf } from "../../../shared/defaults.ts";
import { stabilityShort } from "../../../shared/words/holding.ts";
import { plan } from "../../document/store.ts";
import { holdingNow } from "../../live/holding-now.ts";
import { Disclosure } from "../../ui/disclosure.tsx";
import { RowBody } from "../row-body.tsx";

/** What stability calculates at, what seeps through and what is to be pumped. */
export function HoldingBlock() {
  const now = holdingNow.value;
  return (
    <Disclosure
      id="holding"
      title="Stability, seepage, pumps"
      summary={
        now ? stabilityShort(now.line, now.holding, holdingOf(plan.value).soil) : "needs a line"
      }
    >
      <RowBody of="HoldingBody" />
    </Disclosure>
  );
}
