import { signal } from "@preact/signals";
import type { Failure } from "../../shared/failure.ts";

export interface Notice {
  readonly id: number;
  readonly tone: "error" | "info";
  readonly failure: Failure;
  /** What the person can do about it right here. */
  readonly act?: NoticeAct | undefined;
}

export interface NoticeAct {
  readonly label: string;
  readonly run: () => void;
}

/** What the person has not dismissed yet, oldest first. */
export const notices = signal<readonly Notice[]>([]);

let nextNotice = 1;
/** Says something to the person, once for all the times it is said; dismissed by the person. */
export function tell(tone: Notice["tone"], failure: Failure, act?: NoticeAct): void {
  const others = notices.value.filter((each) => !isSame(each.failure, failure));
  notices.value = [...others.slice(-3), { id: nextNotice++, tone, failure, act }];
}

function isSame(one: Failure, other: Failure): boolean {
  return one.code === other.code && JSON.stringify(one) === JSON.stringify(other);
}

/** Takes away the notices with this code: what they say is over. */
export function withdraw(code: string): void {
  notices.value = notices.value.filter((notice) => notice.failure.code !== code);
}

/** The same for all whose code begins so. */
export function withdrawAll(...beginnings: readonly string[]): void {
  const isOver = ({ failure }: Notice) => beginnings.some((each) => failure.code.startsWith(each));
  if (notices.peek().some(isOver)) notices.value = notices.peek().filter((each) => !isOver(each));
}

export function dismiss(id: number): void {
  notices.value = notices.value.filter((notice) => notice.id !== id);
}
