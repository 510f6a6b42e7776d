import type { Raise } from "../../../shared/holding/types.ts";
import { formatLength } from "../../../shared/units.ts";
import { raiseRoomWords } from "../../../shared/words/holding.ts";
import { raisedLevelWords } from "../../../shared/words/water.ts";
import { plan } from "../../document/store.ts";
import type { HoldingNow } from "../../live/holding-now.ts";
import { unitSystem } from "../../live/screen.ts";
import { StationButton } from "../station-button.tsx";
import { HoldingFigure, Row } from "./holding-parts.tsx";

/** How much more the line could carry on the base it gets. */
export function HoldingRaise({ now }: { readonly now: HoldingNow }) {
  const { raise } = now.holding;
  if (!raise) return null;
  const system = unitSystem.value;
  const moreM = Math.max(0, raise.leastM);
  return (
    <section aria-label="Room to raise">
      <h3>Room to raise</h3>
      <dl class="amounts">
        <Row name="More on the same base" note={<Where raise={raise} />}>
          <HoldingFigure make="raiseM" title="Room to raise" holding={now.holding}>
            {moreM > 0 ? formatLength(moreM, system) : "none"}
          </HoldingFigure>
        </Row>
        {moreM > 0 && (
          <Row name="Raised, sized for">
            <HoldingFigure make="raiseM" title="Sized-for level, raised" holding={now.holding}>
              {raisedLevelWords(moreM, raise.standsForM, plan.value, system)}
            </HoldingFigure>
          </Row>
        )}
      </dl>
    </section>
  );
}

function Where({ raise }: { readonly raise: Raise }) {
  return (
    <>
      least at <StationButton chainageM={raise.atM} />
      {raiseRoomWords(raise.leastM, unitSystem.value)}
    </>
  );
}
