import { POUND_KG } from "./constants.ts";

/** The documents behind the numbers, by the keys that sources are given in. */
const DOCUMENTS: Readonly<Record<string, string>> = {
  "NDSU-11":
    "Sandbagging for Flood Protection, AE-626 (Revised), North Dakota State University Extension, 2011, reviewed 2023",
  "NDSU-97":
    "Sandbagging for Flood Protection, AE-626 (Revised), North Dakota State University Extension, February 1997",
  "NDSU-PD":
    "Plug Drains to Keep Sewage Backup Out, news release, North Dakota State University Extension, 8 March 2010",
  "NDSU-RD": "Reduce Flooding from Drains, North Dakota State University Extension, April 2009",
  "NDSU-NR":
    "News releases on sandbagging, North Dakota State University Extension, March 2009 and later",
  BDPF: "Building Dikes to Prevent Flooding, extension sheet, no date",
  "EMI-L4":
    "Lesson Four: Flood Response Methods, expedient flood works training, FEMA Emergency Management Institute and US Army Corps of Engineers, no date",
  "FFO-96": "Flood Fight Operations, FEMA, August 1996",
  "EFT-94":
    "Flood Control Procedures, training visuals, FEMA and US Army Corps of Engineers, c. 1994",
  "CWCB-D2": "Appendix D, Sandbag closures, held by the Colorado Water Conservation Board, no date",
  "IL-RET":
    "Self-help flood protection guide, held by the Colorado Water Conservation Board, no date",
  "DWR-03": "Flood Fighting Methods, California Department of Water Resources, 2003",
  "NWD-04": "Sandbagging Techniques, US Army Corps of Engineers, Northwestern Division, 2004",
  MVR: "Flood fight supplies, National Flood Fight Materiel Center, US Army Corps of Engineers, Rock Island District",
  MVS: "How to Construct a Sandbag Emergency Levee, US Army Corps of Engineers, St. Louis District",
  "MO-2217":
    "How to Construct a Sandbag Emergency Levee, PUB2217, Missouri Department of Natural Resources",
  ERDC: "Laboratory test results, TR-07-3, US Army Engineer Research and Development Center, July 2007 (sandbag levee only)",
  MB: "Sandbag dike sheet, Manitoba area, copies of 2011 to 2024, issuing agency not shown",
  SDUN: "Recommended Procedures for Sand Bag Wall Construction, Municipality of South Dundas, Ontario, 8 May 2017",
  DERB: "Sandbags, Derbyshire County Council",
  PWM: "Primed for Pumps, Public Works Magazine",
  "NIX-11":
    "Levee Seepage, talk of 18 May 2011, quoting TM 3-424 (the flood of 1950) and ETL 1110-2-569",
  VENK: "Geotechnical Engineering, C. Venkatramaiah, New Age",
  DAS: "Principles of Geotechnical Engineering, 9th edition, problems 8.8 to 8.11 and 9.6, B. M. Das, Cengage",
  HOUGH: "Fundamentals of Hydraulic Engineering Systems, chapter 7, Pearson",
  DUP: "Derivation of the Dupuit Equation, lecture",
  "TP-K":
    "Permeabilities of natural formations after Terzaghi and Peck, 1967, in Geotechnical Engineering Investigation Handbook, table 3.13",
  NAV702: "Design Manual 7.02, table 1, US Navy, NAVFAC, 1986",
  KRAHN:
    "Large-scale interface shear testing of sandbag dyke materials, Krahn, Blatz, Alfaro and Bathurst, Geosynthetics International 14(2), 2007",
  RAT: "Rational method, worked problems of a textbook and of an examination",
  "THW-B": "Exercise report, Technisches Hilfswerk Bünde",
  "THW-S": "Der Sandsack, Technisches Hilfswerk, dike-defence project group",
  "THW-E": "Sandbag logistics overview, Technisches Hilfswerk Emden",
  AT: "Sandsäcke als Hochwasserschutz richtig einsetzen, eolv.at, Austria",
  "EM1913-78":
    "EM 1110-2-1913, Design and Construction of Levees, US Army Corps of Engineers, 31 March 1978",
  "IS-280": "IS-280 course, Levee Design (from FEMA 259), FEMA Emergency Management Institute",
  "USGS-D": "Gage datum and elevation pages, and OSW memorandum 2013.02, US Geological Survey",
  "USGS-3DEP":
    "What is the vertical accuracy of the 3D Elevation Program (3DEP) DEMs?, US Geological Survey, July 2024",
  "USGS-F": "Flood inundation mapping, library creation step 2, US Geological Survey",
  "NWS-D": "E-19 benchmarks page, and Datums and Stages, US National Weather Service",
  OWRB: "Floodplain guidebook, figure 1-5, flood profile, Oklahoma Water Resources Board",
  "FR-FT": "85 FR 62698, deprecation of the US survey foot, NIST and NGS, 5 October 2020",
  VOSE: "Handbook of Railroad Construction, G. L. Vose, 1857, arts 106 to 108",
  KHAMIS: "Surveying lecture, average end area and prismoidal volumes, after Ghilani, chapter 26",
  MAHUN: "Open-access surveying text, chapter VIII-A, stationing, J. Mahun",
  "TM-TRK": "TM 9-2320-366-10-1, table 2-15, material weights, US Army",
  "BASE-N": "Protect your basement from flood damage, North Dakota State University Extension",
  "BASE-F": "Do not pump out basements too early or too fast, FEMA releases, 2011 and 2019",
  LOM: "Levee Owner's Manual, US Army Corps of Engineers, March 2006",
  F312: "Homeowner's Guide to Retrofitting, FEMA 312 (P-312), levees and floodwalls, FEMA, 1998 and 2014",
  LSU: "Using Levees, Using Sandbags and Using Pumps in Flood Protection, LSU AgCenter",
  QLD: "DIY using sandbags, Queensland State Emergency Service",
};

/** Every document with its key, in the order of the keys. */
export function allDocuments(): { readonly key: string; readonly title: string }[] {
  return Object.entries(DOCUMENTS)
    .map(([key, title]) => ({ key, title }))
    .sort((a, b) => (a.key < b.key ? -1 : 1));
}

/** Full titles of every document whose key stands in a source line, in the order they stand there. */
export function documentsIn(source: string): string[] {
  const keys = source.match(/\b[A-Z][A-Z0-9]+(?:-[A-Z0-9]+)?\b/g) ?? [];
  return keys.flatMap((key) =>
    Object.hasOwn(DOCUMENTS, key) ? [`${key}: ${DOCUMENTS[key]}`] : [],
  );
}

/** Empty bags as they are shipped: one crate. Source: MVR (12,500 bags, bundles of 500, 1,220 lb). */
export const EMPTY_BAG_CRATE = { bags: 12_500, massKg: 1220 * POUND_KG };

/**
 * Bags per foot of line at a height in feet, base three times the height: N = (3 H + 9 H²) / 2, the whole
 * sum halved, as the published 45 bags at 3 ft prove. Source: NDSU-11.
 */
export function bagsPerFootByFormula(heightFt: number): number {
  return (3 * heightFt + 9 * heightFt ** 2) / 2;
}

/** A published answer to "how many bags", as data. */
export interface PublishedTable {
  readonly key: "NDSU-11" | "NDSU-97" | "EMI-L4";
  readonly name: string;
  /** Rows as printed: height in feet, bags per 100 ft. */
  readonly rows: readonly (readonly [heightFt: number, bagsPer100Ft: number])[];
  /** Height in feet beyond which it says nothing. */
  readonly topFt: number;
  readonly bagsPerFoot: (heightFt: number) => number;
  /** Why its answer differs from the computed one. */
  readonly why: string;
}

const NDSU_11_ROWS = [
  [1, 600],
  [2, 2100],
  [3, 4500],
  [4, 7800],
] as const;

const NDSU_97_ROWS = [
  [1, 800],
  [2, 2000],
  [3, 3400],
] as const;

const EMI_L4_ROWS = [
  [1, 800],
  [2, 2400],
  [3, 5000],
  [4, 8800],
  [5, 13600],
  [6, 19500],
] as const;

/** The published tables that stand beside every computed count. Sources: NDSU-11, NDSU-97, EMI-L4. */
export const PUBLISHED_TABLES: readonly PublishedTable[] = [
  {
    key: "NDSU-11",
    name: "Extension formula, 2011",
    rows: NDSU_11_ROWS,
    topFt: 5,
    bagsPerFoot: bagsPerFootByFormula,
    why: "Base three times the height. It takes the ground as level across the line.",
  },
  {
    key: "NDSU-97",
    name: "Older extension handout, 1997",
    rows: NDSU_97_ROWS,
    topFt: 3,
    bagsPerFoot: (heightFt) => betweenRows(NDSU_97_ROWS, heightFt),
    why: "Its text gives a base three times the height, but its count for the highest levee fits about twice; low levees are wider.",
  },
  {
    key: "EMI-L4",
    name: "Expedient levee table",
    rows: EMI_L4_ROWS,
    topFt: 6,
    bagsPerFoot: (heightFt) => betweenRows(EMI_L4_ROWS, heightFt),
    why: "Base three times the height with a smaller bag and heavier, wet sand.",
  },
];

/** Bags per foot, straight between printed rows and in proportion below the first one. */
function betweenRows(rows: readonly (readonly [number, number])[], heightFt: number): number {
  let [lowFt, lowBags] = [0, 0];
  for (const [highFt, highBags] of rows) {
    if (heightFt <= highFt) {
      const share = (heightFt - lowFt) / (highFt - lowFt);
      return (lowBags + (highBags - lowBags) * share) / 100;
    }
    [lowFt, lowBags] = [highFt, highBags];
  }
  return heightFt <= lowFt + 1e-9 ? lowBags / 100 : Number.NaN;
}
