/** A lift done: hours from the start of work. */
interface DoneLift {
  readonly topM: number;
  readonly bags: number;
  readonly startH: number;
  readonly finishH: number;
}

/** When each lift of each stretch is done. */
export interface Schedule {
  /** For each stretch its lifts in order. */
  readonly byStretch: readonly (readonly DoneLift[])[];
  /** Hour of the last bag; 0 where nothing is built. */
  readonly finishH: number;
}
