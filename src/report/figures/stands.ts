import { addScaled } from "../../math/vector.js";
import { standFoot } from "../../scene/lamp/stand-bodies.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene } from "../../scene/types.js";
import { area, line, type Mark } from "./drawing.js";
import { bodyOutline, onSheet, type Sheet } from "./outlines.js";

/** The columns and booms that stand in the scene, and under each column its feet: a circle, or a line from the side. */
export function standMarks(sheet: Sheet, { sources, bodies }: Scene): readonly Mark[] {
  const fromTop = sheet.up[2] === 0;
  const feet = sources.flatMap((source): readonly Mark[] => {
    const { stand } = source;
    const foot = standFoot(source);
    if (stand === null || foot === null) return [];
    const name = `${lampName(source)} feet`;
    if (fromTop) {
      const ball = { kind: "sphere", name, centre: foot, radius: stand.feet, reflectance: 0 } as const;
      return [area("stand", name, bodyOutline(sheet, ball))];
    }
    const end = (way: number) => onSheet(sheet, addScaled(foot, sheet.right, way * stand.feet));
    return [line("stand", name, end(-1), end(1))];
  });
  const tubes = bodies
    .filter((body) => body.of === "stand")
    .map((body): Mark => area("tube", body.name, bodyOutline(sheet, body)));
  return [...feet, ...tubes];
}
