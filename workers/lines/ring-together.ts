import { refusal } from "../../shared/failure.ts";
import type { SearchNote } from "../../shared/search-types.ts";
import { biggerCordons } from "../search/bigger-cordons.ts";
import { noRingInTime, ringSteps } from "../search/search-ring.ts";
import type { FoundRing, SearchOptions, SearchRequest, SearchStep } from "../search/types.ts";

/** What a search gives that the rest of this room needs. */
export interface Search {
  readonly rings: readonly FoundRing[];
  readonly cutShort: boolean;
  readonly notes: readonly SearchNote[];
}

/**
 * The best single ring round all structures of a request: other groupings are not looked at, so that it can be
 * had while something is dragged. In a drawn window they are.
 * @throws Refusal with a code `site/...` when there is none
 */
export function* ringTogether(
  request: SearchRequest,
  options: SearchOptions,
): Generator<SearchStep, Search> {
  const { structures, window } = request;
  if (structures.length === 1 || "outline" in window) return yield* ringSteps(request, options);
  const [cordon] = yield* biggerCordons(request, options, [window.reachM]);
  if (!cordon?.ring && cordon?.cutShort && options.timeCapMs !== undefined) {
    throw noRingInTime(options.timeCapMs, structures.length);
  }
  if (!cordon?.ring) {
    throw refusal("site/no-ring", { buildings: structures.length });
  }
  return {
    rings: [cordon.ring],
    cutShort: cordon.cutShort,
    notes: cordon.cutShort ? [{ kind: "cut-short" }] : [],
  };
}
