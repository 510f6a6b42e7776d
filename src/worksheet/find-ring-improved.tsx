import { formatCount, formatLength } from "../../shared/units.ts";
import type { Improved } from "../siting/improve.ts";
import { unitSystem } from "../state.ts";

/** What improving the chosen line came to. */
export function ImprovedNote({ result }: { result: Improved }) {
  const { before, after, notes } = result;
  const system = unitSystem.value;
  const fewer = before.bags - after.bags;
  const height = (m: number) => formatLength(m, system);
  return (
    <p class="hint" role="status">
      Improved: {formatCount(before.bags)} to <strong>{formatCount(after.bags)} bags</strong>,{" "}
      {formatCount(Math.abs(fewer))} {fewer < 0 ? "more" : "fewer"}; greatest height{" "}
      {height(before.greatestHeightM)} to {height(after.greatestHeightM)}. {notes.join(" ")}
    </p>
  );
}
