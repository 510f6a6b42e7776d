import "./stakes.css";
import type { VNode } from "preact";
import { lineStakes, type Stake } from "../../shared/stakes/stakes.ts";
import { rodReading, shownInstrument } from "../../shared/survey/rod.ts";
import { formatStation, lengthIn, lengthUnit, type UnitSystem } from "../../shared/units.ts";
import { foundLines, tapeFigure } from "../../shared/words/stake-place.ts";
import {
  bagsFigure,
  coursesFigure,
  groundMark,
  heightFigure,
  smallFigure,
  stakeLead,
  stakeNote,
  stakeRemedies,
  surveyedBrief,
} from "../../shared/words/stakes-page.ts";
import { BenchmarkBox } from "./benchmark-box.tsx";
import { type Rows, Sheet } from "./sheet.tsx";
import { stakePlaceRows, useStakeGrid } from "./stake-places.tsx";
import type { SheetFrame } from "./title-block.tsx";

/** Empty rows for stakes set between those of the page; never made from the room of a page, which they would change. */
const EXTRA_ROWS = 8;
const COLUMNS = 15;
/** Figures of a higher line (10 ft) and stations of a longer one (10+00) need wider columns, metres. */
const TALL_M = 3.04;
const LONG_M = 304.8;

/** The stakes for the crew: where each one is, what to mark on it, courses, base and rod readings. */
export function StakesSheet(frame: SheetFrame) {
  const { plan, line, system } = frame.of;
  const grid = useStakeGrid(line);
  return (
    <Sheet
      {...frame}
      isWhole={grid !== undefined}
      name="Stakes"
      short="Stakes"
      pieces={[
        stakeRows(frame),
        EXTRA_STAKES,
        <div key="remedies" class="stake-remedies">
          {stakeRemedies(line, plan.practice.stationIntervalM, system).map(({ title, text }) => (
            <div key={title}>
              <h3>{title}</h3>
              <p>{text}</p>
            </div>
          ))}
        </div>,
        stakePlaceRows(frame.of, grid ?? null),
      ]}
    />
  );
}

function stakeRows({ of: { plan, line, system } }: SheetFrame): Rows {
  const instrument = shownInstrument(plan, system);
  const stakes = lineStakes(plan, line);
  const at = (index: number) => formatStation(stakes[index]!.station.chainageM, system);
  const { call, mark, settle } = stakeLead(line, system);
  const surveyed = surveyedBrief(line.surveyed, system);
  const isTall = line.totals.greatestHeightM > TALL_M || line.totals.lengthM > LONG_M;
  return {
    rows: stakes.map((stake) => (
      <StakeRow
        key={`${stake.station.chainageM}`}
        stake={stake}
        instrument={instrument}
        system={system}
      />
    )),
    around: (rows) => (
      <>
        <BenchmarkBox plan={plan} system={system} />
        <p class="stake-lead">
          <strong>{call}</strong> {mark} {settle} {surveyed}
        </p>
        <table class="stakes" data-table="stations" data-tall={isTall}>
          <Head instrument={instrument} system={system} />
          <tbody data-rows>{rows}</tbody>
        </table>
      </>
    ),
    nameOf: (from, to) => `Stakes ${at(from)} to ${at(to - 1)}`,
    partOf: (from, to) => ({
      fromM: stakes[from]!.station.chainageM,
      toM: stakes[to - 1]!.station.chainageM,
    }),
  };
}

interface HeadProps {
  readonly instrument: number | null;
  readonly system: UnitSystem;
}

function Head({ instrument, system }: HeadProps) {
  const unit = lengthUnit(system);
  return (
    <>
      <colgroup>
        {Array.from({ length: COLUMNS }, (_, i) => (
          <col key={i} style={{ width: `var(--stake-${i + 1})` }} />
        ))}
      </colgroup>
      <thead>
        <tr>
          <th rowSpan={2}>Station</th>
          <th colSpan={2} class="stake-over">
            Ties from building corners, {unit}
          </th>
          <th colSpan={2} class="stake-over">
            Elevation, {unit}
          </th>
          <th colSpan={2} class="stake-over">
            Height at stake
          </th>
          <th class="stake-over">Courses</th>
          <th colSpan={2} class="stake-over">
            Toe to stake, {unit}
          </th>
          <th rowSpan={2}>Bags per {unit}</th>
          <th colSpan={2} class="stake-over stake-rod">
            ROD READING
            <br />
            HI {instrument?.toFixed(2) ?? <span class="stake-rule" />}
          </th>
          <th rowSpan={2}>Set by</th>
          <th rowSpan={2}>
            <span class="unseen">Done</span>✓
          </th>
        </tr>
        <tr>
          <th class="stake-text">first</th>
          <th class="stake-text">second</th>
          <th>ground</th>
          <th>top of levee</th>
          <th>{unit}</th>
          <th>{system === "us" ? "ft in" : "cm"}</th>
          <th>stake / toe</th>
          <th>water</th>
          <th>land</th>
          <th class="stake-rod stake-rod-top">top</th>
          <th class="stake-rod-ground">ground</th>
        </tr>
      </thead>
    </>
  );
}

interface StakeRowProps {
  readonly stake: Stake;
  readonly instrument: number | null;
  readonly system: UnitSystem;
}

function StakeRow({ stake, instrument, system }: StakeRowProps): VNode {
  const { station } = stake;
  const { groundM, crestM, heightM, toeWatersideM, toeLandsideM, isOverLimit } = station;
  const level = (m: number | null) => (m === null ? "" : lengthIn(m, system).toFixed(2));
  const rod = (m: number | null) => {
    if (instrument === null || m === null) return "";
    const reading = rodReading(instrument, m, system);
    return reading < 0 ? "over HI" : reading.toFixed(2);
  };
  const state = isOverLimit ? "over" : groundM === null || isOverLimit === null ? "unknown" : null;
  return (
    <tr data-stake={state ?? undefined}>
      <td class="stake-text">
        <strong>{formatStation(station.chainageM, system)}</strong>{" "}
        {isOverLimit ? <b class="stake-flag">OVER</b> : <small>{stakeNote(station)}</small>}
      </td>
      <Ties stake={stake} system={system} />
      <td>
        {groundMark(station) && <b class="stake-read">{groundMark(station)}</b>}
        {groundM === null ? "no data" : level(groundM)}
      </td>
      <td>{level(crestM)}</td>
      <td class="stake-large">{heightFigure(heightM, system)}</td>
      <td>{heightM === null ? "" : smallFigure(heightM, system)}</td>
      <td class="stake-courses">{coursesFigure(station)}</td>
      <td>{heightFigure(toeWatersideM, system)}</td>
      <td>{heightFigure(toeLandsideM, system)}</td>
      <td>{bagsFigure(station, system)}</td>
      <td class="stake-large stake-rod">{rod(crestM)}</td>
      <td class="stake-rod-ground">{rod(groundM)}</td>
      <td />
      <td>
        <span class="stake-tick" />
      </td>
    </tr>
  );
}

function Ties({ stake, system }: Pick<StakeRowProps, "stake" | "system">) {
  const { found } = stake;
  if (found.by !== "ties") {
    const lines = foundLines(stake, system);
    return (
      <td class="stake-text stake-found" colSpan={2}>
        <small>
          {lines.length > 1 ? lines.map((line) => <span key={line}>{line}</span>) : lines}
        </small>
      </td>
    );
  }
  return (
    <>
      {found.ties.map(({ corner, distanceM }) => (
        <td key={corner} class="stake-text">
          <b>{corner}</b> {tapeFigure(distanceM, system)}
        </td>
      ))}
    </>
  );
}

const EXTRA_STAKES: Rows = {
  rows: Array.from({ length: EXTRA_ROWS }, (_, i) => (
    <tr key={i}>
      <td />
      <td class="stake-rod" />
      <td />
      <td>
        <span class="stake-tick" />
      </td>
    </tr>
  )),
  around: (rows) => (
    <table class="stakes stakes-extra">
      <caption>
        Extra stakes: set one in every low place between two stakes. Copy the top reading of the
        nearer stake.
      </caption>
      <tbody data-rows>{rows}</tbody>
    </table>
  ),
};
