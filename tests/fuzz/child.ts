/** Tries inputs one after the other and says what became of each: `node child.ts SEED FROM TO`. */
import { makeInput } from "./inputs.ts";
import { closeJudges, tryInput, type Verdict } from "./try-input.ts";

/** One accepted raster in so many is read by GDAL too. */
const JUDGED = 16;

export type ChildSays =
  | { readonly index: number; readonly of: string; readonly says: "begin" }
  | {
      readonly index: number;
      readonly of: string;
      readonly says: "end";
      readonly verdict: Verdict;
    };

const [seed, from, to] = process.argv.slice(2).map(Number) as [number, number, number];
for (let index = from; index < to; index++) {
  const input = makeInput(seed, index);
  const of = `${input.kind} ${input.of}`;
  process.send!({ index, of, says: "begin" } satisfies ChildSays);
  const verdict = await tryInput(input, index % JUDGED === 0);
  process.send!({ index, of, says: "end", verdict } satisfies ChildSays);
}
await closeJudges();
process.disconnect();
