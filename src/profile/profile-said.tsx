import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import type { UnitSystem } from "../../shared/units.ts";
import { momentSaid, overtopsFirstWords, reachListWords } from "../../shared/words/profile.ts";
import { scheduleWords } from "../../shared/words/work.ts";
import type { LineMark } from "../drawing/profile/line-marks.ts";
import type { ProfileMoment } from "../drawing/profile/moment.ts";

interface ProfileSaidProps {
  readonly id: string;
  readonly line: SizedLine;
  readonly marks: readonly LineMark[];
  readonly time: LineTime | null;
  readonly moment: ProfileMoment | null;
  readonly system: UnitSystem;
}

/** What the picture shows beside heights, for those who listen. */
export function ProfileSaid({ id, line, marks, time, moment, system }: ProfileSaidProps) {
  const over = marks.filter(({ kind }) => kind === "over");
  const titles = marks.filter(({ kind }) => kind !== "over").map(({ title }) => title);
  return (
    <ul class="profile-said" id={id}>
      {[
        ...titles,
        ...overtopsFirstWords(over, system),
        ...reachListWords(line, system),
        ...(time ? [`${scheduleWords(time)}.`] : []),
        ...(moment ? [momentSaid(moment, time)] : []),
      ].map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}
