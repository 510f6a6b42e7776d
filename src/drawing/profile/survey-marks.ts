import type { SizedLine } from "../../../shared/sizing-types.ts";
import { formatStation, type UnitSystem } from "../../../shared/units.ts";
import { readingMarkWords, surveyMarkWords } from "../../../shared/words/ground-chances.ts";
import type { LineMark } from "./line-marks.ts";

/** Where to survey the ground first, in that order, and where it was read. */
export function surveyMarks(line: SizedLine, system: UnitSystem): readonly LineMark[] {
  const first = line.simulatedGround?.surveyFirst ?? [];
  const read = line.surveyed?.readings ?? [];
  return [
    ...first.map((each, index): LineMark => {
      const { chainageM } = each;
      const short = `Survey ${formatStation(chainageM, system)}`;
      return {
        ...{ key: `mark-survey-${index}`, kind: "survey", tone: "quiet", number: null, chainageM },
        texts: index === 0 ? [`Survey first at ${formatStation(chainageM, system)}`, short] : [],
        title: surveyMarkWords(each, system),
      };
    }),
    ...read.map(
      (each, index): LineMark => ({
        ...{
          key: `mark-reading-${index}`,
          kind: "reading",
          tone: "quiet",
          number: null,
          texts: [],
        },
        chainageM: each.chainageM,
        title: readingMarkWords(each, system),
      }),
    ),
  ];
}
