import { holdingOf } from "../defaults.ts";
import type { Plan } from "../plan.ts";
import { sectionById } from "../sections.ts";
import type { CrossSection } from "../sizing-types.ts";
import { type FreeBody, freeBody } from "./free-body.ts";
import { restingLevee } from "./levee-body.ts";
import { withWater } from "./sample-shape.ts";

/** The free body, and the height above the waterside toe of the plane it rests on, metres. */
export interface DrawnBody extends FreeBody {
  readonly planeM: number;
}

/**
 * The free body of a levee cut across, for its drawing; null where nothing is built or ground is missing, and
 * for a levee type that depends on its bracing, which is not calculated.
 */
export function standingAt(section: CrossSection, plan: Plan): DrawnBody | null {
  const { bodyM2, heightM, crestM, waterM, waterSide, crownM } = section;
  if (bodyM2 === null || heightM === null || !(bodyM2 > 0)) return null;
  const kind = sectionById(section.section);
  if (!kind.ok || kind.value.carriedBy === "bracing") return null;
  const dropAt = (offsetM: number) => crestM - groundAt(section, offsetM);
  const { toeLeftM, toeRightM } = section;
  const left = { toeM: toeLeftM, dropM: dropAt(toeLeftM) };
  const right = { toeM: toeRightM, dropM: dropAt(-toeRightM) };
  const [water, land] = waterSide === 1 ? [left, right] : [right, left];
  const shape = withWater(
    {
      crownM,
      areaM2: bodyM2,
      runWater: section.runWater,
      runLand: section.runLand,
      toeWaterM: water.toeM,
      toeLandM: land.toeM,
      dropWaterM: water.dropM,
      dropLandM: land.dropM,
    },
    heightM,
    crestM - waterM,
  );
  const holding = holdingOf(plan);
  const friction = { low: holding.frictionLow, high: holding.frictionHigh };
  const { body, load, planeM } = restingLevee(
    shape,
    shape.waterDepthM,
    kind.value.kgPerM3(holding),
  );
  return { ...freeBody(body, load, friction, holding.uplift), planeM };
}

function groundAt({ offsetM, groundM }: CrossSection, wantedM: number): number {
  let nearest = 0;
  for (let i = 1; i < offsetM.length; i++) {
    if (Math.abs(offsetM[i]! - wantedM) < Math.abs(offsetM[nearest]! - wantedM)) nearest = i;
  }
  return groundM[nearest]!;
}
