import type { Failure } from "../../failure.ts";
import type {
  FeatureComplaint,
  FilePlace,
  GeometryComplaint,
  PlanComplaint,
  PlanList,
} from "../../plan-complaints.ts";
import { ROLE_WORDS } from "../../plan-feature.ts";
import type { OtherKind, TextFile } from "../../plan-json.ts";
import type { Came } from "../../plan-text.ts";
import { cameWords } from "../came.ts";
import { plural } from "../plural.ts";
import { lonLatWords } from "./plan-values.ts";
import { unknownSectionWords } from "./reach-sections.ts";
import type { RefusalTexts } from "./text.ts";

const TEXT_FILES: Readonly<Record<TextFile, string>> = {
  plan: "a plan file",
  shapes: "a file of shapes",
  "kml-gpx": "a KML or GPX file",
};
const OTHER_KINDS: Readonly<Record<OtherKind, string>> = {
  empty: "an empty file",
  tiff: "a TIFF image",
  zip: "a zip archive",
  binary: "binary data",
  xml: "XML or HTML (perhaps KML or a web page)",
};
/** What the entries of each list of a plan are called, all and one. */
const LISTS: Readonly<Record<PlanList, readonly [string, string]>> = {
  structures: ["buildings", "Building"],
  alignments: ["lines", "Line"],
  noGo: ["no-go areas", "No-go area"],
  sources: ["sources", "Source"],
  culverts: ["culverts", "Culvert"],
  drains: ["drains", "Drain"],
  possibleCulverts: ["possible culverts", "Possible culvert"],
  roads: ["exit roads", "Road"],
  workPlaces: ["work places", "Work place"],
  terrain: ["elevation data files", "Elevation data file"],
  progress: ["marks of what is built (progress)", "Mark"],
};
const CORRECT_FEATURE = "Correct this feature in the file. The present plan is as it was.";
const PLAN_WANTED = 'Expected a plan: a GeoJSON FeatureCollection with the member "drystead";';
const SETTING_WANTED = {
  marks: "a list of what is built",
  "mark-objects": "a list of what is built, each an object",
  files: "a list of files",
  text: "text",
} as const;

/** Why a plan cannot be read or changed so. */
export const PLAN_REFUSALS = {
  "plan/not-json": (given: { file: TextFile } & ({ kind: OtherKind } | { cause: string })) => [
    `Expected ${TEXT_FILES[given.file]}, which is GeoJSON text; ${"kind" in given ? `came ${OTHER_KINDS[given.kind]}` : `it cannot be read as JSON: ${given.cause}`}.`,
    "kind" in given
      ? given.kind === "tiff"
        ? "Open it in Elevation data."
        : "Choose a .geojson file."
      : "Choose a .geojson file, or correct this one where the message points.",
  ],
  "plan/too-large": ({ file, came, most }: { file: TextFile; came: number; most: number }) => [
    `Expected ${TEXT_FILES[file]} of at most ${millions(most)} million characters; came ${millions(came)} million.`,
    "Check that this is the right file; cut it down to the site if it is.",
  ],
  "plan/cannot-read": ({ name, cause }: { name: string; cause: string }) => [
    `The file ${name} could not be read: ${cause}`,
    "It may have been moved or changed since you chose it. Choose it again.",
  ],
  "plan/too-deep": ({ file, deepest }: { file: TextFile; deepest: number }) => [
    `Expected ${TEXT_FILES[file]} nested at most ${deepest} deep; this one is nested deeper.`,
    "No plan or footprint needs that. Ask for the file again from its source.",
  ],
  "plan/truncated": ({ file, open }: { file: TextFile; open: number }) => [
    `Expected ${TEXT_FILES[file]} that is complete; this one ends with ${plural(open, "bracket")} still open.`,
    "It was cut off while it was saved or copied. Fetch it again, or open an earlier copy.",
  ],
  "plan/hostile-key": ({ file }: { file: TextFile }) => [
    `Expected ${TEXT_FILES[file]} without an entry named __proto__; this one has one.`,
    "No valid file has it. Ask for the file again from its source.",
  ],
  "plan/foreign": (
    given: { how: "no-collection"; came: Came } | { how: "no-settings" } | { how: "settings-lost" },
  ) => {
    if (given.how === "settings-lost") {
      return [
        `${PLAN_WANTED} it has features of a plan, but its settings are missing.`,
        'Another program may have dropped them. Copy the member "drystead" from the plan as it was saved here, or add "drystead": {"version": 1} to take every default.',
      ];
    }
    const came =
      given.how === "no-settings" ? "it has no such member" : `came ${cameWords(given.came)}`;
    return [
      `${PLAN_WANTED} ${came}.`,
      "If it holds building footprints, import it as buildings in Line instead.",
    ];
  },
  "plan/newer-version": ({ version, known }: { version: number; known: number }) => [
    `Expected a plan of version ${known}; this one has version ${version}, written by a newer Drystead.`,
    "Open it with the newer Drystead, or save it there for this one.",
  ],
  "plan/bad-version": ({ came, most }: { came: Came; most: number }) => [
    `Expected the plan's version as a whole number from 1 to ${most}; came ${cameWords(came)}.`,
    `Put "version": ${most} first in the member "drystead".`,
  ],
  "plan/other-crs": (given: { named: string } | { came: Came }) => [
    `Expected longitude and latitude in WGS 84 (RFC 7946); the file says its coordinates are in ${"named" in given ? given.named : cameWords(given.came)}.`,
    "Export it again as GeoJSON in EPSG:4326.",
  ],
  "plan/no-features": ({ came }: { came: Came }) => [
    `Expected "features" as a list; came ${cameWords(came)}.`,
    "The file is damaged: ask for it again, or open an earlier copy.",
  ],
  "plan/bad-feature": ({ at, complaint }: { at: FilePlace; complaint: FeatureComplaint }) => [
    `${placeWords(at)}: ${featureWords(complaint)}`,
    CORRECT_FEATURE,
  ],
  "plan/bad-geometry": ({ at, complaint }: { at: FilePlace; complaint: GeometryComplaint }) => [
    `${placeWords(at)}: ${geometryWords(complaint)}`,
    CORRECT_FEATURE,
  ],
  "plan/bad-value": (
    given:
      | { how: "no-settings"; came: Came }
      | {
          how: "setting";
          setting: string;
          expected: { as: "object"; keys: readonly string[] } | { as: keyof typeof SETTING_WANTED };
          came: Came;
        }
      | { how: "invalid"; why: Failure },
    _units,
    say,
  ) => {
    switch (given.how) {
      case "no-settings":
        return [
          `Expected the member "drystead" as an object with the settings; came ${cameWords(given.came)}.`,
          'Put "drystead": {"version": 1} in the file to take every default.',
        ];
      case "setting": {
        const { setting, expected, came } = given;
        const wanted =
          expected.as === "object"
            ? `an object with ${expected.keys.join(", ")}`
            : SETTING_WANTED[expected.as];
        return [
          `Expected the setting ${setting} to be ${wanted}; came ${cameWords(came)}.`,
          "Correct it in the file, or leave it out: every setting has a default. The present plan is as it was.",
        ];
      }
      case "invalid":
        return [
          say(given.why)[0],
          "Correct it in the file, or leave it out. The present plan is as it was.",
        ];
    }
  },
  "plan/invalid": (complaint: PlanComplaint) => [
    planComplaintWords(complaint),
    "The plan is as it was. Give a value in the range named, then try again.",
  ],
  "plan/unknown-section": ({ known, came }: { known: readonly string[]; came: Came }) => [
    unknownSectionWords(known, came),
    "Choose one of these, or leave it out for the sandbag pyramid.",
  ],
} satisfies RefusalTexts;

/** A feature or shape of a file, and a corner of it: `Building "Barn", corner 3`. */
export function placeWords({ of, name, feature, corner }: FilePlace): string {
  return [calledWords(of, name, feature), ...(corner ? [`corner ${corner}`] : [])].join(", ");
}

function calledWords(of: FilePlace["of"], name?: string, feature?: number): string {
  switch (of) {
    case "file":
      return "The file";
    case "feature":
      return `Feature ${feature}`;
    case "shape":
      if (name !== undefined) return `Shape "${name}"`;
      return feature === undefined ? "A shape" : `Shape ${feature}`;
    default:
      if (name !== undefined) return `${ROLE_WORDS[of]} "${name}"`;
      if (feature !== undefined) return `${ROLE_WORDS[of]} (feature ${feature})`;
      return `A ${ROLE_WORDS[of].toLowerCase()}`;
  }
}

function featureWords(complaint: FeatureComplaint): string {
  switch (complaint.is) {
    case "no-feature":
      return `Expected a GeoJSON Feature; came ${cameWords(complaint.came)}.`;
    case "no-properties":
      return `Expected properties as an object; came ${cameWords(complaint.came)}.`;
    case "no-name":
      return `Expected its name to be text; came ${cameWords(complaint.came)}.`;
    case "too-many": {
      const { what, most, came } = complaint;
      return atMostWords(most, what === "features" ? what : LISTS[what][0], came);
    }
    case "second":
      return `Expected one ${complaint.what}; this is the second.`;
  }
}

function geometryWords(complaint: GeometryComplaint): string {
  switch (complaint.is) {
    case "no-lon-lat":
      return lonLatWords(complaint);
    case "no-list":
      return `Expected coordinates as a list; came ${cameWords(complaint.came)}.`;
    case "no-corners":
      return `Expected coordinates as a list of corners; came ${cameWords(complaint.came)}.`;
    case "no-pair":
      return `Expected [x, y] in the grid of the file; came ${cameWords(complaint.came)}.`;
    case "no-polygon":
      return `Expected a Polygon with an outline; came ${cameWords(complaint.came)}.`;
    case "no-outline":
      return "Expected an outline; came none.";
    case "no-point":
      return "Expected a point; came none.";
    case "no-way":
      return "Expected a line from upstream to downstream; came a point.";
    case "other-type":
      return `Expected ${complaint.expected.join(" or ")}; came ${cameWords(complaint.came)}.`;
    case "several-parts":
      return `Expected one part; came a ${complaint.type} of ${complaint.parts}. Make each part a feature.`;
  }
}

function planComplaintWords(complaint: PlanComplaint): string {
  switch (complaint.is) {
    case "no-plan":
      return `Expected a plan; came ${cameWords(complaint.came)}.`;
    case "unknown-entry":
      return `Expected a plan without the unknown entry "${complaint.key}".`;
    case "no-list":
      return `Expected ${LISTS[complaint.list][0]} as a list; came ${cameWords(complaint.came)}.`;
    case "too-many":
      return atMostWords(complaint.most, LISTS[complaint.list][0], complaint.came);
    case "same-id":
      return `${LISTS[complaint.list][1]}: expected identifiers that differ; ${cameWords(complaint.id)} came twice.`;
    case "no-chosen":
      return `Expected the chosen line (chosenId) among the lines; came ${cameWords(complaint.chosenId)}.`;
    case "value": {
      const { of, corner, said } = complaint;
      const place = [
        ...(of ? [`${LISTS[of.list][1]} ${cameWords(of.called)}`] : []),
        ...(corner === null ? [] : [`corner ${corner}`]),
      ].join(", ");
      return place === "" ? said : `${place}: ${said}`;
    }
  }
}

function atMostWords(most: number, what: string, came: number): string {
  return `Expected at most ${most} ${what}; came ${came}.`;
}

function millions(count: number): string {
  return (count / 1e6).toFixed(1);
}
