import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { CompareTable } from "../../drawing/compare-table.tsx";
import { chooseAlternative } from "../../live/actions.ts";
import { sized } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { mustFixOn, tracedNow } from "../../live/water-now.ts";

/** All alternatives in one table; pressing a name chooses it. */
export function CompareBody() {
  const lines = plan.value.alignments.flatMap((each) => sized.value.get(each.id) ?? []);
  return (
    <div class="table-scroll">
      <CompareTable
        plan={plan.value}
        mustFixOn={mustFixOn}
        lines={lines}
        chosen={chosenId.value}
        system={unitSystem.value}
        traced={tracedNow.value}
        onChoose={chooseAlternative}
      />
    </div>
  );
}
