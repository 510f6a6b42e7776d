import { failureWords } from "../../../shared/words/failure.ts";
import { chosenAlternative } from "../../document/chosen.ts";
import { ground } from "../../live/ground.ts";
import { sizingFailure } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { uncounted } from "../../live/uncounted.ts";

/** Before there is a sized line: why not, and what comes next. */
export function NothingSized() {
  const failure = uncounted.value ?? sizingFailure.value;
  if (failure) {
    const { message, remedy } = failureWords(failure, unitSystem.value);
    return <Said headline="Nothing is counted" next={`${message} ${remedy}`} />;
  }
  if (ground.value && chosenAlternative.value) {
    return <Said headline="Counting" next="The bags and what to fix first appear here." />;
  }
  return <Said headline="Nothing to size yet" next={nextStep()} />;
}

function Said({ headline, next }: { readonly headline: string; readonly next: string }) {
  return (
    <div class="verdict-words">
      <p class="verdict-headline">{headline}</p>
      <p class="verdict-remedy">{next}</p>
    </div>
  );
}

function nextStep(): string {
  if (!ground.value)
    return "Open elevation data first. The bags, the heights and what to fix first appear here.";
  return "Draw a ring or press Find a line. The bags, the heights and what to fix first appear here.";
}
