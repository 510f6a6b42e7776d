import type { ReachComplaint, ReachSectionsComplaint } from "../../plan-reach-sections.ts";
import type { Came } from "../../plan-text.ts";
import { cameWords } from "../came.ts";

/** What is wrong with the sections of reaches in a plan file, a sentence in its own units. */
export function reachSectionsWords(complaint: ReachSectionsComplaint): string {
  if (complaint.is === "no-list") {
    return `Expected what each reach is built as (reachSections) as a list of at most ${complaint.most}; came ${cameWords(complaint.came)}.`;
  }
  return `Reach ${complaint.reach}: ${reachWords(complaint)}`;
}

/** That nothing is built so. */
export function unknownSectionWords(known: readonly string[], came: Came): string {
  return `Expected a reach's section as one of ${known.join(", ")}; came ${cameWords(came)}.`;
}

function reachWords(complaint: ReachComplaint): string {
  const came = cameWords(complaint.came);
  switch (complaint.is) {
    case "no-section":
      return `Expected an object with section and figures; came ${came}.`;
    case "other-entry":
      return `Expected only section and figures; came the unknown entry ${came}.`;
    case "unknown-section":
      return unknownSectionWords(complaint.known, complaint.came);
    case "unknown-figure":
      return `Expected figures of "${complaint.of}" among ${complaint.known.join(", ")}; came ${came}.`;
    case "figure": {
      const { label, key, of, lowSI, highSI } = complaint;
      return `Expected "${label}" (${key}) of "${of}" from ${lowSI} to ${highSI}; came ${came}.`;
    }
  }
}
