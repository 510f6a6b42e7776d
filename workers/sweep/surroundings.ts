/** Reach from a building within which a line round it is looked for first, meters. */
export const NEAR_REACH_M = 25;
/** Reach where none is found there, or none under the height limit: the widest of them. */
export const FAR_REACH_M = 60;
