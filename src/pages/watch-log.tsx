import type { Exported } from "../../shared/exports/exported.ts";
import type { Holding } from "../../shared/holding/types.ts";
import { formatStation, lengthUnit } from "../../shared/units.ts";
import {
  HAZARD_SOURCES,
  pumpBoxes,
  SIGN_SOURCES,
  sumpPlaceWords,
} from "../../shared/words/watch.ts";
import { nearestChainage } from "../drawing/line/along.ts";

const PHONES = ["Command post", "Engineer", "Pump supplier", "Road, rescue"];
const COMPANIES = ["Electric company", "Gas company"];
/** Height of one empty row, and of all that is no row, millimetres. */
const ROW_MM = 6.9;
const REST_MM = 113;
/** Share of the rows that the patrol has. */
const PATROL_SHARE = 0.56;
const MOST_PUMPS = 6;

interface WatchLogProps {
  readonly of: Exported;
  readonly holding: Holding;
  /** Stations of the stops, in order. */
  readonly stops: readonly number[];
  /** Level at which water can first reach the levee, in words. */
  readonly begin: string | null;
  readonly roomMm: number;
}

/** What is written on each round: phones, patrol, pumps, closures. Copied for every shift. */
export function WatchLog({ of, holding, stops, begin, roomMm }: WatchLogProps) {
  const { system, plan } = of;
  const rows = Math.max(6, Math.floor((roomMm - REST_MM) / ROW_MM));
  const patrol = Math.round(rows * PATROL_SHARE);
  const unit = lengthUnit(system);
  const isStage = plan.water.by === "stage";
  const highest = formatStation(of.line.totals.greatestHeightAtM, system);
  return (
    <div class="watch-log">
      <h2>
        Phones <small>Copy this page for every shift.</small>
      </h2>
      <div class="watch-phones">
        <p>
          Emergency <strong>911</strong>
        </p>
        <Blank label={PHONES[0]!} />
        <p>
          Utility locate <strong>811</strong>
        </p>
        <Blank label={PHONES[1]!} />
        <Blank label={COMPANIES[0]!} />
        <Blank label={PHONES[2]!} />
        <Blank label={COMPANIES[1]!} />
        <Blank label={PHONES[3]!} />
      </div>
      <h2>
        Patrol log{" "}
        <small>
          Begin at {isStage ? "stage" : "elevation"} <span class="stake-rule" /> {unit}
          {begin && `, ${begin} at the latest`}; every <span class="stake-rule" /> min, every 2 h at
          the least; two people
        </small>
      </h2>
      <Log
        heads={[
          "Time",
          `${isStage ? "Gauge stage" : "Water"}, ${unit}`,
          `Top less water at ${highest}, ${unit}`,
          ...stops.map((m) => formatStation(m, system)),
          "All the rest",
          "Seen where, done what, reported to",
          "Both names",
        ]}
        wide={[stops.length + 4]}
        times
        rows={patrol}
      />
      <Pumps of={of} holding={holding} rows={rows - patrol} />
      <p class="watch-sources">
        Sources: signs {SIGN_SOURCES}; hazards {HAZARD_SOURCES}
      </p>
    </div>
  );
}

function Pumps({ of, holding, rows }: Pick<WatchLogProps, "of" | "holding"> & { rows: number }) {
  const { system, line } = of;
  const { inside, pumping } = holding;
  const near = inside && nearestChainage(line.walk, inside.lowestAt);
  const unit = lengthUnit(system);
  const count = Math.min(MOST_PUMPS, pumping.proposed?.working ?? 1);
  return (
    <>
      <h2>
        Pumps, sump and closures{" "}
        <small>{sumpPlaceWords(near?.chainageM ?? null, inside?.lowestM ?? null, system)}</small>
      </h2>
      <div class="watch-boxes">
        {pumpBoxes(holding, system).map(({ title, text }) => (
          <div key={title}>
            <h3>{title}</h3>
            <p>{text}</p>
          </div>
        ))}
      </div>
      <Log
        heads={[
          "Time",
          ...Array.from({ length: count }, (_, i) => `P${i + 1}`),
          "Spare",
          "Fuel left, h",
          `Sump, ${unit} below mark`,
          "Hose, intake, cords, closures tight",
          "By",
        ]}
        wide={[count + 4]}
        rows={rows}
      />
    </>
  );
}

interface LogProps {
  readonly heads: readonly string[];
  /** Columns with more room. */
  readonly wide: readonly number[];
  /** Whether the hours of two-hour rounds stand in the first column. */
  readonly times?: boolean;
  readonly rows: number;
}

/** Hours between two rounds. */
const ROUND_H = 2;

function Log({ heads, wide, times = false, rows }: LogProps) {
  return (
    <table class="watch-table-log">
      <thead>
        <tr>
          {heads.map((head, i) => (
            <th key={head} scope="col" data-wide={wide.includes(i)}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: rows }, (_, row) => (
          <tr key={row}>
            {heads.map((head, i) => (
              <td key={head}>{times && i === 0 && row > 0 && <small>+{row * ROUND_H} h</small>}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Blank({ label }: { readonly label: string }) {
  return (
    <p class="watch-line">
      {label} <span />
    </p>
  );
}
