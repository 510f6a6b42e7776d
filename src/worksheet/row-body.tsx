import { signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { asFailure, type Failure } from "../../shared/failure.ts";
import { loadPart } from "../../shared/load-part.ts";
import { unitSystem } from "../live/screen.ts";
import { FailureText } from "../ui/failure-text.tsx";

type Bodies = typeof import("./row-bodies.ts");

const bodies = signal<Bodies | null>(null);
const failure = signal<Failure | null>(null);

/** Fetches what the rows of the worksheet show when they are open. */
export async function fetchRowBodies(): Promise<void> {
  if (bodies.peek()) return;
  failure.value = null;
  try {
    bodies.value = await loadPart("the rows of the worksheet", () => import("./row-bodies.ts"));
  } catch (thrown) {
    failure.value = asFailure(thrown);
  }
}

/** What is in a row of the worksheet, or in a dialog of it, fetched before the first of them is opened or when it is. */
export function RowBody({ of }: { readonly of: keyof Bodies }) {
  useEffect(() => void fetchRowBodies(), []);
  const Body = bodies.value?.[of];
  if (Body) return <Body />;
  if (!failure.value) {
    return (
      <p class="hint" role="status">
        Loading…
      </p>
    );
  }
  return (
    <p class="field-why" role="alert">
      <FailureText failure={failure.value} system={unitSystem.value} />{" "}
      <button type="button" class="text-button" onClick={fetchRowBodies}>
        Try again
      </button>
    </p>
  );
}
