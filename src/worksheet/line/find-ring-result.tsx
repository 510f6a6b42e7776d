import type { ComponentChildren } from "preact";
import { isComplete, isCounted } from "../../../shared/completeness.ts";
import { letterOf } from "../../../shared/line-letter.ts";
import type { FindRingResponse, FoundLine } from "../../../shared/search-types.ts";
import { formatCount, formatShare } from "../../../shared/units.ts";
import { bagsWords } from "../../../shared/words/counted.ts";
import { mustFixWords } from "../../../shared/words/must-fix.ts";
import { butOverLimit, howGoodWords, searchNoteWords } from "../../../shared/words/search.ts";
import { unitsOf } from "../../../shared/words/units.ts";
import { plan } from "../../document/store.ts";
import { sized } from "../../live/results.ts";
import { unitSystem } from "../../live/screen.ts";
import { differenceShown } from "../../live/search/difference.ts";
import {
  findRing,
  lookForProof,
  lookFurther,
  lookingFurther,
} from "../../live/search/find-ring.ts";
import { catchingUp, following } from "../../live/search/follow.ts";
import { type Found, foundForOf, isOutdated } from "../../live/search/found.ts";
import { improvedNow } from "../../live/search/improve.ts";
import { takeInstead } from "../../live/search/put-found.ts";
import { ringsOf } from "../../live/search/ring-settings.ts";
import { mustFixOn } from "../../live/water-now.ts";
import { CordonsTable } from "./find-ring-cordons.tsx";
import { canCompare, type SavingRow, savingRows, shareSaved, sumOf } from "./saving.ts";

/** A line found by a longer search is worth offering from this share of its bags on. */
const WORTH_SHARE = 0.005;

/** What was found, beside what was chosen before, and what else could be had. */
export function FoundResult({ result }: { result: Found }) {
  const { further, notes } = result;
  const edited = isEdited(result);
  const outdated = isOutdated.value || edited;
  return (
    <section class="found" aria-label="What was found">
      <SavingTable result={result} />
      {!outdated && <GoodWords result={result} />}
      {outdated && !following.value && (
        <p class="hint">
          {edited ? "Edited since it was found." : "The plan has changed since."}{" "}
          <button type="button" class="text-button" onClick={() => void findRing()}>
            Find it again
          </button>
        </p>
      )}
      {!outdated &&
        (further?.notes ?? notes).map((note) => (
          <p key={note.kind}>{searchNoteWords(note, unitsOf(unitSystem.value))}</p>
        ))}
      {!outdated && further && <Offer result={result} further={further} />}
      <Toggles result={result} />
      {!outdated && further && further.cordons.length > 0 && (
        <CordonsTable result={result} cordons={further.cordons} />
      )}
    </section>
  );
}

/** Whether somebody has moved a corner of what was found. */
function isEdited({ ids }: Found): boolean {
  return plan.value.alignments.some((each) => ids.includes(each.id) && !foundForOf(each));
}

function SavingTable({ result }: { result: Found }) {
  const { ids, againstId } = result;
  const { alignments } = plan.value;
  const system = unitSystem.value;
  const lines = ids.flatMap((id) => sized.value.get(id) ?? []);
  if (lines.length < ids.length) return null;
  const index = alignments.findIndex(({ id }) => id === againstId);
  const before = index < 0 ? null : (sized.value.get(againstId!) ?? null);
  const improved = index < 0 ? null : improvedNow(alignments[index]!, plan.value);
  const against = before && isCounted(before) ? (improved?.before ?? before.totals) : null;
  const sum = sumOf(lines.map(({ totals }) => totals));
  const rows = savingRows(sum, against, system);
  const share = against ? shareSaved(sum, against) : 0;
  const mustFix = lines.reduce((count, line) => count + mustFixOn(line), 0);
  return (
    <table class="saving">
      <caption>
        {ids.map((id) => letterOf(alignments.findIndex((each) => each.id === id))).join(", ")}
        {against && ` against ${letterOf(index)}, ${alignments[index]!.name}`}
        {against && improved && ", as drawn"}
        {share > 0 && <strong>{formatShare(share)} fewer bags</strong>}
        {mustFix > 0 && <strong class="saving-fix">{mustFixWords(mustFix)}</strong>}
        {[...lines, ...(before ? [before] : [])]
          .filter(({ totals }) => !isComplete(totals))
          .map(({ id, name, totals }) => (
            <small key={id}>
              {against && "Not compared. "}
              {name}: {bagsWords(totals, system)}.
            </small>
          ))}
      </caption>
      <tbody>
        {rows.map((row) => (
          <Row key={row.name} row={row} />
        ))}
        <MustFixRow found={mustFix} before={before && !improved ? mustFixOn(before) : null} />
      </tbody>
    </table>
  );
}

function MustFixRow({ found, before }: { readonly found: number; readonly before: number | null }) {
  if (found + (before ?? 0) === 0) return null;
  const words = before === null ? "" : before === found ? "the same" : `${before} before`;
  return <Row row={{ name: "Must fix", amount: `${found}`, difference: words }} />;
}

function Row({ row }: { row: SavingRow }) {
  return (
    <tr>
      <th scope="row">{row.name}</th>
      <td>{row.amount}</td>
      <td>{row.difference}</td>
    </tr>
  );
}

/** How good it is, or how to learn it. */
function GoodWords({ result }: { result: Found }) {
  const { further, lines } = result;
  if (lookingFurther.value)
    return <p class="hint">Checking how good it is, and looking farther out.</p>;
  if (lines.length > 1) return null;
  const known = further && isLike(further.lines, lines) ? further.lines[0]!.howGood : null;
  if (!further) {
    return (
      <p>
        {result.cutShort && "Quick search: a longer one may find a better line. "}
        <Ask onAsk={() => void lookFurther()}>How good is it?</Ask>
      </p>
    );
  }
  return (
    <>
      {known && <p>{howGoodWords(known)}</p>}
      {known?.kind === "estimate" && result.proofSought && (
        <p>No proof was found in the time given.</p>
      )}
      {known?.kind === "estimate" && !result.proofSought && (
        <Ask onAsk={() => void lookForProof()}>Look for a proof</Ask>
      )}
    </>
  );
}

/** Whether a further look came to the one line that there is. */
function isLike(then: readonly FoundLine[], now: readonly FoundLine[]): boolean {
  const [one, ...more] = then;
  const bags = now[0]!.totals.bags;
  if (!one || more.length > 0) return false;
  return Math.abs(one.totals.bags - bags) <= WORTH_SHARE * bags;
}

function Ask({ onAsk, children }: { onAsk: () => void; children: ComponentChildren }) {
  return (
    <button type="button" class="text-button found-ask" onClick={onAsk}>
      {children}
    </button>
  );
}

/** Separate rings, or what a longer search found, when that takes fewer bags. */
function Offer({ result, further }: { result: Found; further: FindRingResponse }) {
  const [nowSum, thenSum] = [result.lines, further.lines].map((lines) =>
    sumOf(lines.map(({ totals }) => totals)),
  );
  if (!canCompare(nowSum!, thenSum!)) return null;
  const [now, then] = [nowSum!.bags, thenSum!.bags];
  if (then > now * (1 - WORTH_SHARE)) return null;
  const several = further.lines.length > 1;
  const what = several ? `${further.lines.length} separate rings` : "A line from a longer search";
  const note = several ? "Take separate rings" : "Take the longer search's line";
  return (
    <p>
      {what} would need {formatCount(then)} bags, {formatCount(now - then)} fewer than the line
      found
      {butOverLimit(thenSum!, unitSystem.value)}.{" "}
      <button type="button" class="text-button" onClick={() => takeInstead(further.lines, note)}>
        {note}
      </button>
    </p>
  );
}

function Toggles({ result }: { result: Found }) {
  const isOne = result.ids.length === 1;
  return (
    <>
      {isOne && (
        <label class="check-line">
          <input
            type="checkbox"
            checked={following.value}
            onChange={(event) => {
              following.value = event.currentTarget.checked;
            }}
          />
          Follow the stage{catchingUp.value && <span class="hint">searching</span>}
        </label>
      )}
      {isOne && areRings([...result.ids, result.againstId]) && (
        <label class="check-line">
          <input
            type="checkbox"
            checked={differenceShown.value}
            onChange={(event) => {
              differenceShown.value = event.currentTarget.checked;
            }}
          />
          Shade the difference
          <span class="shade shade-in" aria-hidden="true" />
          <span class="hint">in</span>
          <span class="shade shade-out" aria-hidden="true" />
          <span class="hint">out</span>
        </label>
      )}
    </>
  );
}

function areRings(ids: readonly (string | null)[]): boolean {
  return ids.every((id) => ringsOf(plan.value).some((ring) => ring.id === id));
}
