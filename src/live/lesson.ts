import { signal } from "@preact/signals";

/** Whether the lesson is open over the planning screen: it has ground of its own and never touches the plan. */
export const lessonOpen = signal(false);

export function openLesson(): void {
  lessonOpen.value = true;
}

export function leaveLesson(): void {
  lessonOpen.value = false;
}
