import type { FilePlace } from "../../plan-complaints.ts";
import { plural } from "../plural.ts";
import { placeWords } from "./plan.ts";
import type { RefusalTexts } from "./text.ts";

/** What was repaired, left out or assumed in a plan that was read: each a sentence, nothing to do. */
export const PLAN_NOTES = {
  "plan/no-water-stated": () => [
    "The file states no level of the water: type a stage or an elevation in Water before anything is counted.",
    "",
  ],
  "plan/elevation-ruling": () => [
    "The file states a water elevation and a stage: the elevation is used.",
    "",
  ],
  "plan/setting-kept": ({ setting }: { setting: string }) => [
    `The setting ${setting} is not known here: it is kept but not used.`,
    "",
  ],
  "plan/nad83-taken": ({ offM }: { offM: number }, units) => [
    `Coordinates in NAD 83 are taken as WGS 84: places may be off by up to ${units.distance(offM)}.`,
    "",
  ],
  "plan/other-roles-kept": ({ count }: { count: number }) => [
    `${plural(count, "feature")} of other roles ${count === 1 ? "is" : "are"} kept in the file but not used.`,
    "",
  ],
  "plan/kept-without-geometry": ({ at }: { at: FilePlace }) => [
    `${placeWords(at)} has no geometry: it is kept in the file but not used.`,
    "",
  ],
  "plan/kept-as-other-type": ({
    at,
    type,
    expected,
  }: {
    at: FilePlace;
    type: string;
    expected: readonly string[];
  }) => [
    `${placeWords(at)} is a ${type}: it is kept in the file but not used. Expected ${expected.join(" or ")}.`,
    "",
  ],
  "plan/name-cut": ({ at, most }: { at: FilePlace; most: number }) => [
    `${placeWords(at)}: its name was cut to ${most} characters.`,
    "",
  ],
  "plan/parts-apart": ({ at, parts }: { at: FilePlace; parts: number }) => [
    `${placeWords(at)} has ${parts} parts: each is now on its own.`,
    "",
  ],
  "plan/holes-left-out": ({ at }: { at: FilePlace }) => [
    `${placeWords(at)} has holes, which are left out: only its outline is used.`,
    "",
  ],
  "plan/id-changed": ({ at, was, now }: { at: FilePlace; was: string; now: string }) => [
    `${placeWords(at)}: its identifier "${was}" was taken; it is now "${now}".`,
    "",
  ],
  "plan/no-chosen": ({ chosenId }: { chosenId: string }) => [
    `The chosen line "${chosenId}" is not in the file: none is chosen.`,
    "",
  ],
  "plan/more-notes": ({ count }: { count: number }) => [`And ${count} more like these.`, ""],
} satisfies RefusalTexts;
