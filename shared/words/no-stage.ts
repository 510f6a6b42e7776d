/** In the place of a verdict while nobody has given the water's level. */
export const NOT_KNOWN_NO_STAGE = "not known: no stage";
