import { withCorners } from "../../shared/pins.ts";
import type { LonLat } from "../../shared/plan.ts";
import { tell } from "../document/notices.ts";
import { apply, plan } from "../document/store.ts";
import { cornerStep, sameCorners, stepNote, stepSaid } from "./corner-step.ts";
import { dragging } from "./drawing-state.ts";

let gestures = 0;

/**
 * One drag of a corner, from the first change to the release: at most one edit in an animation frame, all of
 * them one step of undo that is named for what it began with.
 */
export class EditGesture {
  private alternativeId: string | null = null;
  private words: { readonly note: string; readonly said: string } | null = null;
  private key = "";
  private frame: number | null = null;
  private down = false;

  /** @param readCorners corners as the drawing library has them now; null when it holds none */
  constructor(private readonly readCorners: () => readonly LonLat[] | null) {
    window.addEventListener("pointerdown", () => {
      this.down = true;
    });
    window.addEventListener("pointerup", () => {
      this.down = false;
    });
  }

  /** The library changed the held alternative. */
  changed(alternativeId: string): void {
    if (this.alternativeId === null) {
      this.alternativeId = alternativeId;
      this.key = `corner-${++gestures}`;
      this.words = null;
      dragging.value = true;
    }
    this.frame ??= requestAnimationFrame(() => {
      this.frame = null;
      this.write();
    });
  }

  /** True while the pointer is down, so that a corner just put in is still being dragged. */
  mayGoOn(): boolean {
    return this.down;
  }

  /** Writes what has not been written yet. */
  flush(): void {
    if (this.frame !== null) cancelAnimationFrame(this.frame);
    this.frame = null;
    this.write();
  }

  /** The gesture is over. */
  end(): void {
    this.alternativeId = null;
    dragging.value = false;
  }

  /** The pointer was let go: a corner that was put in by a click alone ends here. */
  released(): void {
    if (this.alternativeId === null) return;
    queueMicrotask(() => {
      if (this.alternativeId === null) return;
      this.flush();
      this.end();
    });
  }

  private write(): void {
    const id = this.alternativeId;
    const corners = this.readCorners();
    const alternative = plan.peek().alignments.find((each) => each.id === id);
    if (!alternative || !corners || sameCorners(alternative.corners, corners)) return;
    const step = cornerStep(alternative.corners, corners);
    if (!step) return;
    this.words ??= { note: stepNote(step, alternative.name), said: stepSaid(step) };
    const outcome = apply({
      ...this.words,
      gesture: this.key,
      change: (now) => ({
        ...now,
        alignments: now.alignments.map((each) =>
          each.id === id ? withCorners(each, corners) : each,
        ),
      }),
    });
    if (!outcome.ok) tell("error", outcome.failure);
  }
}
