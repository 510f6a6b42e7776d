import type { GroundSampler } from "../../shared/ground.ts";
import type { Section } from "../../shared/plan.ts";
import { cutAcross, emptyCut, levelAreaM2 } from "../../shared/section.ts";
import type { SectionModel } from "./types.ts";

/** The plan's own section as the search needs it, cut by the ground given. */
export function sectionModel(section: Section, ground: GroundSampler): SectionModel {
  const cut = emptyCut();
  const across = { xM: 0, yM: 0, leftX: 0, leftY: 0, crestM: 0, shiftM: 0 };
  return {
    areaAt: (heightM) => levelAreaM2(section, heightM),
    halfBaseAt: (heightM) =>
      heightM > 0 ? Math.max(section.baseRatio * heightM, section.crownM) / 2 : 0,
    cut: (xM, yM, leftX, leftY, crestM) => {
      across.xM = xM;
      across.yM = yM;
      across.leftX = leftX;
      across.leftY = leftY;
      across.crestM = crestM;
      cutAcross(cut, ground, section, across);
      return cut;
    },
  };
}
