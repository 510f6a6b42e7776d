import type { Sweep } from "../../../shared/buildings/shown-states.ts";
import type { CheckedBuilding, CheckedGroup } from "../../../shared/buildings/types.ts";
import { addKeptAnswers, dropOtherChecks, keepGroups } from "../../document/kept-buildings.ts";

/** What comes in is written so often, milliseconds: no more than that is lost when the page ends. */
const WRITE_EVERY_MS = 2000;

/** Keeps the answers of one check on this device as they come in. */
export interface AnswerKeeper {
  readonly add: (checked: CheckedBuilding) => void;
  /** Writes what is not written yet. */
  readonly write: () => void;
  /** The same, and that the check came to its end. */
  readonly end: (groups: readonly CheckedGroup[]) => void;
}

/**
 * A keeper for the check that is named so; those of other checks go. A building that could not be checked is not kept:
 * it is tried again. Where the browser has no room the check goes on, and begins anew after a reload.
 * @param known what is kept already
 */
export function answerKeeper(check: string, known: Sweep["checked"]): AnswerKeeper {
  let waiting: CheckedBuilding[] = [];
  let writtenAtMs = performance.now();
  let last: Promise<void> = dropOtherChecks(check).catch(() => {});
  const after = (work: () => Promise<void>) => {
    last = last.then(work).catch(() => {});
  };
  const write = () => {
    writtenAtMs = performance.now();
    if (waiting.length === 0) return;
    const now = waiting;
    waiting = [];
    after(() => addKeptAnswers(check, now));
  };
  return {
    add: (checked) => {
      if (checked.failed !== null || known.get(checked.id) === checked) return;
      waiting.push(checked);
      if (performance.now() - writtenAtMs >= WRITE_EVERY_MS) write();
    },
    write,
    end: (groups) => {
      write();
      after(() => keepGroups(check, groups));
    },
  };
}
