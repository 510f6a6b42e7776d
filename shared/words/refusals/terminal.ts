import type { Failure } from "../../failure.ts";
import { listed } from "../list.ts";
import { quoted } from "../quoted.ts";
import { QUEUE_REFUSALS } from "./queue.ts";
import type { RefusalText, RefusalTexts } from "./text.ts";

/** What a file on the command line was to be. */
const EXPECTED = {
  plan: "a plan file",
  raster: "a raster",
  "side-car": "a file beside the raster",
  forecast: "a forecast",
  footprints: "a file of building footprints",
  culverts: "a file of culverts",
  roads: "a file of roads",
};

/** What a file is read as. */
export type FileRole = keyof typeof EXPECTED;

interface OfFile {
  readonly path: string;
  readonly expected: FileRole;
}

/** Of why a file cannot be written, by the code of the system. */
const NOT_WRITTEN: Readonly<Record<string, string>> = {
  ENOSPC: "the disk is full",
  EDQUOT: "the disk quota is used up",
  ENOENT: "there is no such folder",
  ENOTDIR: "a part of its path is not a folder",
  EISDIR: "it is a folder",
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  EROFS: "the disk can only be read",
  ENAMETOOLONG: "the name is too long",
};

/** Parts of a check that its answers follow from. */
const CHECK_PARTS = {
  plan: "the plan (its water, levee type, crew, forecast, or no-go areas)",
  buildings: "the buildings",
  stages: "the stages",
  people: "the most people on one line",
  ground: "the elevation data",
};

export type CheckPart = keyof typeof CHECK_PARTS;

interface LookedFor {
  /** What CHROME_PATH says. */
  readonly named: string | null;
  readonly onPath: readonly string[];
  readonly places: readonly string[];
}

interface Written {
  readonly path: string;
  /** Of the system; empty where it gives none. */
  readonly code: string;
  readonly message: string;
}

interface NamedLine {
  readonly letter: string;
  readonly name: string;
}

const DRAW_ONE =
  'Draw one, or add a feature with "role": "alignment" (a Polygon is a ring, a LineString a line).';

function lines(all: readonly NamedLine[]): string {
  return all.map(({ letter, name }) => `${letter} "${name}"`).join(", ");
}

function names(all: readonly string[]): string {
  return all.map((name) => `"${name}"`).join(", ") || "none";
}

function megabytes(bytes: number, digits = 0): string {
  return `${(bytes / 1e6).toFixed(digits)} MB`;
}

/** What is wrong with a part of a stock file, and what came. */
type BadStock = { readonly path: string } & (
  | { readonly fault: "not-json" }
  | { readonly fault: "no-object"; readonly came: string }
  | { readonly fault: "unknown"; readonly known: readonly string[]; readonly came: string }
  | { readonly fault: "figure" | "list"; readonly part: string; readonly came: string }
  | { readonly fault: "in-both"; readonly id: string }
);

function badStockText(given: BadStock): RefusalText {
  return [`${given.path}: expected ${stockFault(given)}.`, "Correct it, or leave that part out."];
}

function stockFault(given: BadStock): string {
  switch (given.fault) {
    case "not-json":
      return 'JSON like {"bags": 120000, "people": 180}; came text that is not JSON';
    case "no-object":
      return `an object like {"bags": 120000, "people": 180}; came ${given.came.slice(0, 100)}`;
    case "unknown":
      return `a part ${given.known.join(", ")}; came ${quoted(given.came, 100)}`;
    case "figure":
      return `${given.part} as a number of 0 or more; came ${given.came.slice(0, 100)}`;
    case "list":
      return `${given.part} as a list of ids of buildings; came ${given.came.slice(0, 100)}`;
    case "in-both":
      return `each building in mustDo or in mustNot alone; came ${quoted(given.id, 100)} in both`;
  }
}

interface Pages {
  readonly number: string;
  /** The plan's title; null where the number alone is compared. */
  readonly site: string | null;
}

function pagesWords({ number, site }: Pages): string {
  return site === null ? number : `${number} and "${site}"`;
}

const noColumn =
  (of: FileRole) =>
  ({ name, has }: { name: string; has: readonly string[] }): RefusalText => [
    `Expected a column "${name}" in the ${EXPECTED[of].slice(2)}; it has ${names(has)}.`,
    "Name a column as the file has it.",
  ];

/** Reasons that only the terminal gives; no part of the page. */
export const TERMINAL_REFUSALS = {
  ...QUEUE_REFUSALS,
  "file/missing": ({ path, expected }: OfFile) => [
    `Expected ${EXPECTED[expected]}; there is no file ${path}.`,
    "Check the name and the folder.",
  ],
  "file/is-folder": ({ path, expected }: OfFile) => [
    `Expected ${EXPECTED[expected]}; ${path} is a folder.`,
    "Name the file itself; name several rasters one after the other.",
  ],
  "file/not-a-file": ({ path, expected }: OfFile) => [
    `Expected ${EXPECTED[expected]}; ${path} is not a file that can be read from any place.`,
    "Save what comes from a pipe or a device to a file first.",
  ],
  "file/unreadable": ({ path, expected, cause }: OfFile & { cause: string }) => [
    `Expected ${EXPECTED[expected]}; ${path} cannot be read (${cause}).`,
    "Check who may read it.",
  ],
  "plan/file-too-large": ({ path, bytes, most }: { path: string; bytes: number; most: number }) => [
    `Expected a plan file of at most ${megabytes(most)}; ${path} has ${megabytes(bytes, 1)}.`,
    "Check that this is the plan, not a raster or a survey.",
  ],
  "plan/in-file": ({ path, why }: { path: string; why: Failure }, _units, say) => {
    const [message, remedy] = say(why);
    return [`${path}: ${message}`, remedy];
  },
  "plan/no-water-given": ({ path, unknown }: { path: string; unknown: readonly string[] }) => [
    [
      `${path}: expected the water's level; the plan states none.`,
      ...unknown.map((key) => `The setting water.${key.slice(0, 60)} is not known here.`),
    ].join(" "),
    'Type a stage or an elevation in Water and save the plan again, or put "water": {"elevationM": 262.5} in the member "drystead", or "stageM" with "gaugeZeroM"; meters.',
  ],
  "plan/no-line": ({ toSize }: { toSize: boolean }) => [
    `Expected ${toSize ? "at least one ring or line to size" : "a ring or line"}; the plan has none.`,
    DRAW_ONE,
  ],
  "plan/which-line": ({ has }: { has: readonly NamedLine[] }) => [
    `Expected --line, because the plan has several lines and none is chosen. It has ${lines(has)}.`,
    "Name one by its letter, for example --line A.",
  ],
  "plan/no-line-named": ({ came, has }: { came: string; has: readonly NamedLine[] }) => [
    `Expected the letter, name or id of a line in the plan; came "${came}". It has ${lines(has)}.`,
    "Write the letter, or the name as the plan has it, in quotes when it holds a space.",
  ],
  "plan/no-such-structure": ({ came, has }: { came: string; has: readonly string[] }) => [
    `Expected the name or id of a building in the plan; came "${came}". It has ${names(has)}.`,
    "Write the name as the plan has it, in quotes when it holds a space.",
  ],
  "address/vrt-files": ({ name, files, most }: { name: string; files: number; most: number }) => [
    `Expected a VRT of at most ${most} files at an address; "${name}" names ${files}.`,
    "Name the few that lie at the site, each by its own address, or make a VRT of those.",
  ],
  "address/vrt-source": ({ name, source }: { name: string; source: string }) => [
    `Expected "${name}" to name files beside it; it names ${source.slice(0, 120)}, a place on another machine.`,
    "Name the files by their own addresses, without the VRT, or have it made with relative names.",
  ],
  "print/no-browser": ({ named, onPath, places }: LookedFor) => [
    `Expected an installed Chrome or Chromium, which lays the pages out; found none. ${named === null ? `Looked for ${onPath.join(", ")} on PATH, and ${places.join(", ")}` : `CHROME_PATH is ${named}, which is not a program that runs`}.`,
    "Install one (Debian: apt-get install chromium), or set CHROME_PATH to its program.",
  ],
  "print/browser-failed": ({ path, cause }: { path: string; cause: string }) => [
    `The browser ${path} does not start: ${cause}`,
    "Name another Chrome or Chromium in CHROME_PATH.",
  ],
  "print/not-built": ({ folder }: { folder: string }) => [
    `Expected the built program in ${folder}, whose pages are printed; it is not there.`,
    "Run npm run build in the project's folder, and print again.",
  ],
  "print/no-sections": ({ said }: { said: string }) => [
    `Expected every page to be whole; one is not, and nothing was printed. It says: ${said}`,
    "See that the elevation data can be read to its end, and print again.",
  ],
  "print/no-pages": ({ afterS, said }: { afterS: number; said: readonly string[] }) => [
    `Expected pages to print; the program made none in ${afterS} s. ${said.join(" ").slice(0, 400)}`.trim(),
    "Open the plan and its elevation data in the program, and correct what it says there.",
  ],
  "print/other-plan": ({
    expected,
    came,
    page,
  }: {
    expected: Pages;
    came: Pages;
    /** Label of the page; null for all of them. */
    page: string | null;
  }) => [
    `Expected pages of the plan given (plan number ${pagesWords(expected)}); ${page === null ? "the pages have" : `${page} has`} ${pagesWords(came)}. Nothing was printed.`,
    "Run npm run build, so that terminal and pages are of one version, and print again.",
  ],
  "print/address-too-large": ({
    name,
    bytes,
    most,
  }: {
    name: string;
    bytes: number;
    most: number;
  }) => [
    `Expected a raster of at most ${megabytes(most)} at the address, because the pages are made from a copy of it; "${name}" has ${Math.ceil(bytes / 1e6)} MB.`,
    "Download the part that is needed, and name that file.",
  ],
  "output/no-folder": ({ folder, cause }: { folder: string; cause: string }) => [
    `Expected a folder to write to; ${folder} cannot be made (${cause}).`,
    "Name another folder with --out.",
  ],
  "output/is-input": ({ path }: { path: string }) => [
    `Expected another file to write; ${path} is read by this command.`,
    "Write to another file.",
  ],
  "output/not-written": ({ path, code, message }: Written) => [
    `${path} could not be written: ${NOT_WRITTEN[code] ?? message}.`,
    "Make room or choose another file, and start again.",
  ],
  "footprints/no-polygons": ({ path }: { path: string }) => [
    `Expected building outlines as polygons; ${path} has none.`,
    "Export the outlines as polygons.",
  ],
  "footprints/other-reference": ({
    path,
    ground,
    came,
  }: {
    path: string;
    ground: string;
    came: string;
  }) => [
    `Expected ${path} in longitude and latitude or in the grid of the elevation data, ${ground}; it is in ${came}.`,
    "Export it again as GeoJSON in longitude and latitude (WGS 84).",
  ],
  "buildings/no-column": noColumn("footprints"),
  "culverts/no-column": noColumn("culverts"),
  "sweep/no-file": ({ path }: { path: string }) => [
    `Expected the output of an interrupted run; ${path} cannot be read.`,
    "Check the name and the folder, or leave --resume out to start again.",
  ],
  "sweep/own-output": ({ path }: { path: string }) => [
    `Expected the output of an interrupted run; ${path} is empty, since the output of this run goes to it.`,
    "Write the output to another file, or add to the same one with >>.",
  ],
  "sweep/bad-line": ({ path, line }: { path: string; line: number }) => [
    `${path}, line ${line}: expected one JSON object, as "sweep" writes them.`,
    "Give the file as it was written, or leave --resume out to start again.",
  ],
  "sweep/other-check": ({
    path,
    line,
    differ,
  }: {
    path: string;
    line: number;
    differ: readonly CheckPart[];
  }) => [
    `${path}, line ${line}: expected an answer of this very check, came one of another.${differ.length === 0 ? "" : ` These differ: ${listed(differ.map((part) => CHECK_PARTS[part]))}.`}`,
    "Name the same files and options again, or leave --resume out to start again.",
  ],
  "stock/missing": ({ path }: { path: string }) => [
    `Expected a stock file; ${path} cannot be read.`,
    "Check the name and the folder.",
  ],
  "stock/bad-part": badStockText,
  "engine/thread-ended": ({ cause }: { cause: string }) => [
    `A thread ended in the middle of its work: ${cause}.`,
    "Run it again for what was not checked, with fewer --workers if memory is short.",
  ],
} satisfies RefusalTexts;
