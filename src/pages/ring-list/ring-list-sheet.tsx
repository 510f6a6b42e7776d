import { mustFixOf } from "../../../shared/buildings/line-times.ts";
import { mustDoWords, proofWords, runsOutWords } from "../../../shared/words/buildings-answer.ts";
import { FORECASTS, offWords, sameWords } from "../../../shared/words/buildings-forecasts.ts";
import { mustFixWords } from "../../../shared/words/must-fix.ts";
import {
  faultyLines,
  RING_LIST,
  ringListCells,
  ringListNotes,
  ringListTitle,
  stockLines,
} from "../../../shared/words/ring-list.ts";
import { printedWords } from "../../../shared/words/sheet.ts";
import { verticalDatumWords } from "../../../shared/words/vertical-datum.ts";
import { plan } from "../../document/store.ts";
import { bandChoices, offRinged } from "../../live/buildings/choosing.ts";
import { bandsNow } from "../../live/buildings/levels.ts";
import { listed } from "../../live/buildings/listed.ts";
import type { RingList } from "../../live/buildings/ring-list.ts";
import { accuracyNow, ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { type Piece, SheetPages } from "../sheet-pages.tsx";
import { TitleCells } from "../title-block.tsx";
import { crewPieces } from "./crew-rows.tsx";
import { notRingedPieces } from "./not-ringed-rows.tsx";

/** The list on its pages: cautions, lines by crew and deadline, stock, and who is not ringed. */
export function RingListSheet({ list }: { readonly list: RingList }) {
  const pieces: readonly Piece[] = [
    <Cautions key="cautions" />,
    ...crewPieces(list),
    <StockPart key="stock" list={list} />,
    ...notRingedPieces(list),
  ];
  return (
    <SheetPages
      label={RING_LIST.label}
      name={RING_LIST.name}
      short={RING_LIST.name}
      pieces={pieces}
      head={(page) => <Head list={list} page={page} />}
      foot={<Foot />}
    />
  );
}

interface HeadProps {
  readonly list: RingList;
  readonly page: string;
}

function Head({ list: { choice, of, number, chosen }, page }: HeadProps) {
  const system = unitSystem.value;
  const cells = ringListCells({
    ...{ plan: plan.value, number, system, bands: bandsNow.value },
    ...{ printed: printedWords(new Date(), system), bags: of.stock.bags },
    people: of.workForce?.people ?? null,
  });
  const faulty = chosen.filter(({ line }) => mustFixOf(line!).length > 0);
  const names = new Map(listed.value?.buildings.map(({ id, name }) => [id, name]));
  const band = [
    ...choice.mustDoWhy.map(({ id, why }) => mustDoWords(names.get(id) ?? id, why)),
    ...(faulty.length > 0 ? [faultyLines(faulty.map(({ mark }) => mark))] : []),
  ];
  const faults =
    choice.mustDoWhy.length + faulty.reduce((sum, { line }) => sum + mustFixOf(line!).length, 0);
  return (
    <header class="title-block">
      <div class="title-row">
        <p class="title-letter">{chosen.length}</p>
        <p class="title-site">
          <strong>{plan.value.title}</strong>
          <br />
          {ringListTitle(choice)}
        </p>
        <p class="title-sheet">
          <strong>{RING_LIST.label}</strong>
          <br />
          {page}
        </p>
      </div>
      <TitleCells cells={cells} />
      <p class="title-notes">
        {ringListNotes(
          verticalDatumWords(plan.value, ground.value),
          ground.value,
          accuracyNow.value.rmseM,
          system,
        )}
      </p>
      {band.length > 0 && (
        <div class="sheet-band">
          <strong>{mustFixWords(faults)}: </strong>
          <ul>
            {band.map((what) => (
              <li key={what}>{what}</li>
            ))}
          </ul>
        </div>
      )}
    </header>
  );
}

function Foot() {
  return (
    <footer class="sheet-foot">
      <p>{RING_LIST.foot}</p>
      <p>
        {RING_LIST.old[0]}
        <br />
        {RING_LIST.old[1]}
      </p>
    </footer>
  );
}

function Cautions() {
  return (
    <ul class="ring-list-cautions">
      {RING_LIST.cautions.map((caution) => (
        <li key={caution}>{caution}</li>
      ))}
    </ul>
  );
}

function StockPart({ list: { choice, of } }: { readonly list: RingList }) {
  const system = unitSystem.value;
  const off = offRinged.value;
  const forecasts = bandChoices.value;
  const names = new Map(listed.value?.buildings.map(({ id, name }) => [id, name]));
  const same = forecasts?.same.buildings.map((id) => names.get(id) ?? id) ?? [];
  return (
    <div class="ring-list-stock">
      <h2>
        {RING_LIST.stock} <small>{runsOutWords(choice.runsOutFirst)}</small>
      </h2>
      <ul>
        {stockLines(choice, of.stock, system).map((line) => (
          <li key={line}>{line}</li>
        ))}
        <li>
          {proofWords(choice)} {off && offWords(off, system)}
        </li>
        {forecasts && (
          <li>
            {FORECASTS.same}: {sameWords(forecasts, same)}
          </li>
        )}
      </ul>
    </div>
  );
}
