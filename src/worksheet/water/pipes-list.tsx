import type { Culvert, Drain } from "../../../shared/plan.ts";
import { PIPE_WORDS, pipeStateWords } from "../../../shared/words/pipes.ts";
import { changeListed } from "../../document/edits/listed.ts";
import { plan } from "../../document/store.ts";
import { ground } from "../../live/ground.ts";
import { unitSystem } from "../../live/screen.ts";
import { waterNow } from "../../live/water-now.ts";
import { NumberField } from "../../ui/number-field.tsx";
import { ELEVATION, OFFSET } from "../../ui/quantity.ts";
import { NameRow } from "../name-row.tsx";
import { ToolButton } from "../tool-button.tsx";
import { PossibleCulverts } from "./possible-culverts.tsx";

const INVERT_M = { least: -500, most: 9000 };
const SIZE_M = { least: 0.02, most: 10 };

/** Culverts and drains: what is drawn, whether it is plugged, and above which level water passes. */
export function PipesList() {
  const { culverts = [], drains = [] } = plan.value;
  return (
    <section aria-label="Culverts and drains">
      <h3>Culverts and drains</h3>
      <p class="hint">{PIPE_WORDS.lookFor}</p>
      <ul class="plain-list">
        {culverts.map((culvert) => (
          <CulvertRow key={culvert.id} culvert={culvert} />
        ))}
        {drains.map((drain) => (
          <DrainRow key={drain.id} drain={drain} />
        ))}
      </ul>
      <div class="tool-row">
        <ToolButton tool="draw-culvert" icon="culvert" disabled={ground.value === null}>
          Draw a culvert
        </ToolButton>
        <ToolButton tool="place-drain" icon="drain" disabled={ground.value === null}>
          Mark a drain
        </ToolButton>
      </div>
      <PossibleCulverts />
    </section>
  );
}

function CulvertRow({ culvert }: { readonly culvert: Culvert }) {
  const { name, invertsM, sizeM, gate, plugged } = culvert;
  const system = unitSystem.value;
  const [first, last] = invertsM;
  return (
    <li class="pipe">
      <NameRow list="culverts" entry={culvert} />
      <Plugged
        name={name}
        plugged={plugged}
        onPlugged={(now) => changeListed("culverts", culvert, { plugged: now })}
      />
      <div class="named-row">
        <NumberField
          label="Invert, first end"
          value={first}
          quantity={ELEVATION}
          system={system}
          range={INVERT_M}
          blank="ground"
          onValue={(m, gesture) =>
            changeListed("culverts", culvert, { invertsM: [m, last] }, { gesture })
          }
        />
        <NumberField
          label="Invert, other end"
          value={last}
          quantity={ELEVATION}
          system={system}
          range={INVERT_M}
          blank="ground"
          onValue={(m, gesture) =>
            changeListed("culverts", culvert, { invertsM: [first, m] }, { gesture })
          }
        />
      </div>
      <div class="named-row">
        <NumberField
          label="Inside diameter"
          value={sizeM}
          quantity={OFFSET}
          system={system}
          range={SIZE_M}
          blank="not known"
          onValue={(m, gesture) => changeListed("culverts", culvert, { sizeM: m }, { gesture })}
        />
        <Choice
          label={`What shuts ${name}`}
          value={gate ?? ""}
          choices={PIPE_WORDS.gates}
          onChoice={(value) =>
            changeListed("culverts", culvert, { gate: value === "" ? null : value })
          }
        />
      </div>
      <State pipe={culvert} />
    </li>
  );
}

const JOINS = { yes: true, no: false, "": null } as const;

function DrainRow({ drain }: { readonly drain: Drain }) {
  const { name, kind, joinsOutside, plugged } = drain;
  return (
    <li class="pipe">
      <NameRow list="drains" entry={drain} />
      <Plugged
        name={name}
        plugged={plugged}
        onPlugged={(now) => changeListed("drains", drain, { plugged: now })}
      />
      <div class="named-row">
        <Choice
          label={`Kind of drain ${name} is`}
          value={kind}
          choices={PIPE_WORDS.drains}
          onChoice={(value) => changeListed("drains", drain, { kind: value })}
        />
        <Choice
          label={`Whether ${name} joins outside`}
          value={joinsOutside === null ? "" : joinsOutside ? "yes" : "no"}
          choices={PIPE_WORDS.joins}
          onChoice={(value) => changeListed("drains", drain, { joinsOutside: JOINS[value] })}
        />
      </div>
      <State pipe={drain} />
    </li>
  );
}

interface PluggedProps {
  readonly name: string;
  readonly plugged: boolean;
  readonly onPlugged: (now: boolean) => void;
}

function Plugged({ name, plugged, onPlugged }: PluggedProps) {
  return (
    <label class="check-line">
      <input
        type="checkbox"
        aria-label={`${name} is plugged`}
        checked={plugged}
        onChange={(event) => onPlugged(event.currentTarget.checked)}
      />
      Plugged, or its gate shut
    </label>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly choices: readonly { readonly value: T; readonly words: string }[];
  readonly onChoice: (value: T) => void;
}

function Choice<T extends string>({ label, value, choices, onChoice }: ChoiceProps<T>) {
  return (
    <select
      aria-label={label}
      value={value}
      onChange={({ currentTarget }) => {
        const chosen = choices.find((each) => each.value === currentTarget.value);
        if (chosen) onChoice(chosen.value);
      }}
    >
      {choices.map((each) => (
        <option key={each.value} value={each.value}>
          {each.words}
        </option>
      ))}
    </select>
  );
}

function State({ pipe }: { readonly pipe: Culvert | Drain }) {
  const traced = waterNow.value?.pipes.find(({ id }) => id === pipe.id) ?? null;
  return <small>{pipeStateWords(pipe, traced, unitSystem.value)}</small>;
}
