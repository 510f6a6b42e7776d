import { describe, expect, it } from "vitest";
import { findOffences } from "../tools/arrows.mjs";

function offences(path: string, text: string): string[] {
  return findOffences(new Map([[path, text]]));
}

describe("arrows that are allowed", () => {
  it.each([
    ["src/map/draw.ts", 'import { a } from "../../shared/plan.ts"; import "./b.css";'],
    ["src/map/draw.ts", 'import maplibre from "maplibre-gl";'],
    ["src/engine.ts", 'import worker from "../workers/terrain.worker.ts?worker&url";'],
    ["src/live/demo.ts", 'new URL("../../sample-terrain/site.tif", import.meta.url);'],
    ["src/live/demo.ts", 'import siteUrl from "../../sample-terrain/demo.tif?url";'],
    ["workers/raster/read.ts", 'import type { Plan } from "../../shared/plan.ts";'],
    ["workers/command.ts", 'import { readFile } from "node:fs/promises";'],
    ["workers/command/size.ts", 'import { readFile } from "node:fs/promises";'],
    ["shared/stage.ts", 'import proj4 from "proj4"; export * from "./plan.ts";'],
    ["workers/command/size.ts", 'import { note } from "../../shared/words/terminal.ts";'],
  ])("%s: %s", (path, text) => {
    expect(offences(path, text)).toEqual([]);
  });
});

describe("arrows that are broken", () => {
  it.each([
    [
      "src/map/draw.ts",
      'import { open } from "../../workers/engine.ts";',
      "../../workers/engine.ts",
    ],
    ["src/engine.ts", 'import { makeEngine } from "../workers/engine.ts";', "../workers/engine.ts"],
    ["src/engine.ts", 'export { makeEngine } from "../workers/engine.ts";', "../workers/engine.ts"],
    ["src/engine.ts", 'const x = await import("../workers/engine.ts");', "../workers/engine.ts"],
    ["src/engine.ts", 'import W from "../workers/terrain.worker.ts?worker";', "worker.ts?worker"],
    ["src/app.tsx", 'import w from "../workers/terrain.worker.ts?worker&url";', "worker&url"],
    [
      "src/engine.ts",
      'new Worker(new URL("../workers/terrain.worker.ts", import.meta.url))',
      "URL",
    ],
    ["src/app.tsx", 'new Worker(new URL("../workers/terrain.worker.ts", import.meta.url))', "URL"],
    [
      "src/live/demo.ts",
      'import { siteGrid } from "../../sample-terrain/site.ts";',
      "sample-terrain",
    ],
    [
      "src/live/demo.ts",
      'new URL("../../sample-terrain/site.ts", import.meta.url)',
      "sample-terrain",
    ],
    ["workers/engine.ts", 'import { plan } from "../src/document/store.ts";', "../src/"],
    ["workers/engine.ts", 'import { map } from "maplibre-gl";', "maplibre-gl"],
    ["workers/engine.ts", 'import { readFile } from "node:fs";', "node:fs"],
    ["workers/engine.ts", 'import { note } from "../shared/words/terminal.ts";', "terminal.ts"],
    ["shared/words/failure.ts", 'import { A } from "./refusals/terminal.ts";', "terminal.ts"],
    ["src/live/a.ts", 'await import("../../shared/words/refusals/queue.ts");', "queue.ts"],
    ["shared/stage.ts", 'import { open } from "../workers/raster/terrain.ts";', "../workers/"],
    ["shared/stage.ts", 'import type { Tool } from "../src/state.ts";', "../src/state.ts"],
    ["shared/stage.ts", 'import { signal } from "@preact/signals";', "@preact/signals"],
    ["shared/stage.ts", 'import { helper } from "../tests/helper.ts";', "../tests/"],
    ["shared/stage.ts", 'import {\n  one,\n  two,\n} from "../src/state.ts";', "../src/state.ts"],
    ["shared/stage.ts", `const text = \`\${await import('../src/state.ts')}\`;`, "../src/state.ts"],
  ])("%s: %s", (path, text, named) => {
    const found = offences(path, text);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(path);
    expect(found[0]).toContain(named);
  });
});

describe("layers inside src", () => {
  it.each([
    ["src/document/edits/corners.ts", 'import { apply } from "../store.ts";'],
    ["src/live/sizing.ts", 'import { engine } from "../engine.ts";'],
    ["src/live/base-map.ts", 'import { recall } from "../browser/remember.ts";'],
    ["src/pages/plan-drawing.tsx", 'import { Hatches } from "../drawing/hatches.tsx";'],
    ["src/worksheet/water/water-block.tsx", 'import { Row } from "../setting-row.tsx";'],
    ["src/engine.ts", 'import { makeRemoteEngine } from "./engine/remote.ts";'],
    ["src/app.tsx", 'import { MapRoom } from "./map/map-room.tsx";'],
  ])("let %s: %s", (path, text) => {
    expect(offences(path, text)).toEqual([]);
  });

  it.each([
    ["src/pages/map-figure.tsx", 'import { theMap } from "../map/the-map.ts";', "src/pages"],
    ["src/worksheet/line/x.tsx", 'import { a } from "../../profile/x.ts";', "src/worksheet"],
    ["src/document/store.ts", 'import { ground } from "../live/ground.ts";', "src/document"],
    ["src/drawing/hatches.tsx", 'import { plan } from "../document/store.ts";', "src/drawing"],
    ["src/ui/number-field.tsx", 'import { unitSystem } from "../live/screen.ts";', "src/ui"],
    ["src/live/sizing.ts", 'import { MapRoom } from "../map/map-room.tsx";', "src/live"],
    ["src/map/protocols.ts", 'import { engine } from "../engine.ts";', "src/map"],
    ["src/app.tsx", 'import { engine } from "./engine.ts";', "src/wiring"],
    ["src/live/sizing.ts", 'import { split } from "../engine/split.ts";', "src/engine.ts alone"],
    ["src/state.ts", "export const ground = 1;", "stands in no layer"],
    ["src/search/found.ts", "export const found = 1;", "stands in no layer"],
  ])("keep %s from: %s", (path, text, named) => {
    const found = offences(path, text);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(path);
    expect(found[0]).toContain(named);
  });

  const styled = (path: string, css: string) =>
    findOffences(
      new Map([
        ["src/map/legend.tsx", '<p class="map-legend" />'],
        ["src/worksheet/card.tsx", '<p class="card" />'],
        ["src/drawing/bar.tsx", '<p class="bar" />'],
        [path, css],
      ]),
    );

  it.each([
    ["src/map/map.css", ".map-legend { color: red; }"],
    ["src/worksheet/card.css", "@media print { .card .bar, .card > svg { color: red; } }"],
    ["src/worksheet/card.css", ".put-together-3 { color: red; } /* .map-legend {} */"],
    ["src/app.css", ".map-legend .card { color: red; }"],
  ])("let %s style: %s", (path, css) => {
    expect(styled(path, css)).toEqual([]);
  });

  it.each([
    ["src/map/map.css", ".map-legend { color: red; } .card { color: red; }"],
    ["src/worksheet/card.css", "@media print { .card, .map-legend > p { color: red; } }"],
    ["src/drawing/bar.css", ".card .map-legend { color: red; }"],
    ["src/worksheet/card.css", ".bar { color: red; }"],
  ])("keep %s from styling: %s", (path, css) => {
    const found = styled(path, css);
    expect(found).toHaveLength(1);
    expect(found[0]).toContain(path);
  });
});

describe("no DOM in shared and workers", () => {
  it.each([
    "window.addEventListener('resize', go);",
    "const box = document.createElement('div');",
    "localStorage.getItem('x');",
    "function draw(canvas: HTMLCanvasElement) {}",
    "requestAnimationFrame(go);",
    `const s = \`\${window.innerWidth}\`;`,
    "const ok = a / b; document.body.append(x);",
  ])("%s", (text) => {
    expect(offences("shared/stage.ts", text)).toHaveLength(1);
    expect(offences("workers/tiles/tile.ts", text)).toHaveLength(1);
    expect(offences("src/app.tsx", text)).toEqual([]);
  });

  it.each([
    "// window.close() is not called here",
    "/* document.body */ const a = 1;",
    "const message = 'Close the window. Then open it.';",
    "const pattern = /window.x/;",
    "const read = { window: 3 }.window + sample.document.body;",
    "const window = readWindow(); use(window.columns, window[0]);",
    "const document = parse(text); return document.features;",
    "const text = \"import { x } from '../src/state.ts'\";",
  ])("is not misled by %s", (text) => {
    expect(offences("shared/stage.ts", text)).toEqual([]);
  });
});
