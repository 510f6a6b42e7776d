import { letterOf } from "../../../shared/line-letter.ts";
import { chosenId } from "../../document/chosen.ts";
import { plan } from "../../document/store.ts";
import { sized } from "../../live/results.ts";
import { AlternativeCard } from "./alternative-card.tsx";

/** The lines side by side across the top, each with its bags, greatest height, length and verdict. */
export function Alternatives() {
  const { alignments } = plan.value;
  return (
    <nav class="alternatives" aria-label="Lines">
      {alignments.length === 0 && (
        <p class="alternatives-none">No line yet. Lines are compared here side by side.</p>
      )}
      <ol>
        {alignments.map((alternative, index) => (
          <AlternativeCard
            key={alternative.id}
            alternative={alternative}
            letter={letterOf(index)}
            line={sized.value.get(alternative.id) ?? null}
            isChosen={alternative.id === chosenId.value}
            isFirst={index === 0}
            isLast={index === alignments.length - 1}
          />
        ))}
      </ol>
    </nav>
  );
}
