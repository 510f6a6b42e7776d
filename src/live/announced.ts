import { effect, signal } from "@preact/signals";
import { isCounted } from "../../shared/completeness.ts";
import { letterOf } from "../../shared/line-letter.ts";
import { waterElevationAtGauge } from "../../shared/stage.ts";
import { type Announcement, announcementWords } from "../../shared/words/announcements.ts";
import { chosenId } from "../document/chosen.ts";
import { plan } from "../document/store.ts";
import { sizedIsWhole } from "./current.ts";
import { sized } from "./results.ts";
import { unitSystem } from "./screen.ts";
import { catchingUp } from "./search/follow.ts";
import { foundNow } from "./search/found.ts";
import { mustFixOn } from "./water-now.ts";

/** Rest after the last change before it is announced, milliseconds. */
const REST_MS = 700;

/** What a screen reader is told: the water once it rests at another level, and what a search found. */
export const announced = signal("");

/** Keeps {@link announced}. Nothing is announced of the plan as it was opened, nor of a step of a drag. */
export function keepAnnounced(): () => void {
  let announcedM: number | null = null;
  let announcedLines: unknown = null;
  let timer: ReturnType<typeof setTimeout> | undefined;
  const stop = effect(() => {
    clearTimeout(timer);
    const levelM = waterElevationAtGauge(plan.value.water);
    const lines = foundNow.value?.lines ?? null;
    if (!sizedIsWhole.value || catchingUp.value) return;
    const news: (() => Announcement)[] = [
      ...(announcedM !== null && announcedM !== levelM ? [waterNews] : []),
      ...(lines !== null && announcedLines !== lines ? [foundNews] : []),
    ];
    announcedM ??= levelM;
    if (news.length === 0) return;
    timer = setTimeout(() => {
      announcedM = levelM;
      announcedLines = lines;
      const words = news.map((make) => announcementWords(make(), unitSystem.peek(), mustFixOn));
      announced.value = words.join(" ");
    }, REST_MS);
  });
  return () => {
    clearTimeout(timer);
    stop();
  };
}

function waterNews(): Announcement {
  const id = chosenId.peek();
  return { kind: "water", water: plan.peek().water, chosen: id === null ? null : lineNow(id) };
}

function foundNews(): Announcement {
  const { ids, againstId } = foundNow.peek()!;
  const against = againstId === null ? null : lineNow(againstId);
  const line = against?.line ?? null;
  const rival = against && line && isCounted(line) ? { letter: against.letter, line } : null;
  return { kind: "found", lines: ids.map(lineNow), rival };
}

function lineNow(id: string) {
  const index = plan.peek().alignments.findIndex((each) => each.id === id);
  return { letter: letterOf(index), line: sized.peek().get(id) ?? null };
}
