import { useEffect, useState } from "preact/hooks";
import type { CrossSection } from "../../shared/sizing-types.ts";
import { plan } from "../document/store.ts";
import { crossSectionsAt } from "../live/cross-sections.ts";
import type { AtStake } from "./at.ts";

/** The levee cut across at a stake, with so much ground beyond its toes, metres; null until it is there. */
export function useCrossSection({ line, station }: AtStake, marginM: number): CrossSection | null {
  const [cut, setCut] = useState<{ readonly of: unknown; readonly cross: CrossSection } | null>(
    null,
  );
  useEffect(() => {
    let isWanted = true;
    crossSectionsAt(plan.peek(), line.id, [station.chainageM], marginM).then(
      ([cross]) => isWanted && cross && setCut({ of: station, cross }),
      () => {},
    );
    return () => {
      isWanted = false;
    };
  }, [station, line.id, marginM]);
  return cut?.of === station ? cut.cross : null;
}
