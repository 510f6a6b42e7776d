import { hasOtherSections } from "../../shared/reaches.ts";
import type { SizedLine } from "../../shared/sizing-types.ts";
import type { LineTime } from "../../shared/time/types.ts";
import { formatLength, formatStation, type UnitSystem } from "../../shared/units.ts";
import type { LineMark } from "../drawing/profile/line-marks.ts";
import type { ProfileMoment } from "../drawing/profile/moment.ts";
import { doneShare, scheduleWords } from "../drawing/profile/work-words.ts";

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
  const told = marks.filter(({ kind }) => kind !== "over").map(({ title }) => title);
  return (
    <ul class="profile-said" id={id}>
      {[
        ...told,
        ...overWords(over, system),
        ...reachWords(line, system),
        ...(time ? [`${scheduleWords(time)}.`] : []),
        ...(moment ? [momentWords(moment, time)] : []),
      ].map((words) => (
        <li key={words}>{words}</li>
      ))}
    </ul>
  );
}

function overWords(marks: readonly LineMark[], system: UnitSystem): string[] {
  if (marks.length === 0) return [];
  const stations = marks.map(({ chainageM }) => formatStation(chainageM, system));
  return [`A rising river overtops first at ${stations.join(", then ")}.`];
}

function reachWords(line: SizedLine, system: UnitSystem): string[] {
  if (!hasOtherSections(line)) return [];
  return line.reaches.map(({ fromM, toM, sectionName, limitM }, index) => {
    const place = `${formatStation(fromM, system)} to ${formatStation(toM, system)}`;
    return `Reach ${index + 1}, ${place}: ${sectionName}, limit ${formatLength(limitM, system)}.`;
  });
}

function momentWords({ hour, words }: ProfileMoment, time: LineTime | null): string {
  if (!time) return `Water drawn for ${words}.`;
  const built = time.stretches.filter(({ isOnHold }) => !isOnHold);
  const done = built.filter((each) => doneShare(each, hour) >= 1).length;
  return `Water drawn for ${words}; ${done} of ${built.length} stretches are finished by then.`;
}
