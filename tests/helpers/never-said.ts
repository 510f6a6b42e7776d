/** Units that a sentence in one system must not hold; `9 in 10` has no inches. */
export const FOREIGN = {
  us: /\d ?(?:m|cm(?!\/s)|mm|km|kg|m²|m³|L\/s|kPa|kN\/m|t|L)(?![\w+])/,
  metric: /\d ?(?:ft|in(?! \d)|lb|cu yd|cu ft|sq ft|gpm|psf|tons|mi|mil|acres?|yd)(?!\w)/,
} as const;

/** Words that no sentence says: those the trade does not use for what we mean, and promises. */
export const NEVER =
  /\b(?:safe|safely|dry(?! sand| and loose)|holds? (?:back|to|off)|stands? (?:by|up)|reckon(?:ed)?|asked|asks|at rest|cross-fall|torch(?:es)?|plant|crest of (?:a|the) levee|the crest\b|to settle|to know|structure|ground data|kind of ground|raise reserve|level (?:the|its) (?:ground|line)|way of the water|sheets?\b|round (?:the|it|a))\b/i;

/** British spellings, and old-fashioned English. */
export const BRITISH =
  /\b(?:\w*(?:metres?|litres?|centres?)|colours?|grey|levell(?:ed|ing)|towards|neighbours?|favour\w*|whilst|shall|upon|programme|told|wish(?:es)?)\b/i;

/** More words of the file's and the code's own, where a text of the source stands without the sentence around it. */
export const NEVER_ON_SCREEN =
  /\b(?:holds|stands|alternatives?|alignments?|structures?|raster|terrain|order of building|heights drawn)\b/i;
