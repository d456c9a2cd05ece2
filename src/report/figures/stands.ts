import { addScaled } from "../../math/vector.js";
import type { Scene } from "../../scene/types.js";
import { area, line, type Mark } from "./drawing.js";
import { bodyOutline, onSheet, type Sheet } from "./outlines.js";

/** Columns with the circle of their feet, and booms. */
export function standMarks(sheet: Sheet, { sources }: Scene): readonly Mark[] {
  const fromTop = sheet.up[2] === 0;
  return sources.flatMap(({ name, centre, axis, stand, spillOf }) => {
    if (stand === null || spillOf !== undefined) return [];
    const level = Math.sqrt(axis[0] * axis[0] + axis[1] * axis[1]);
    const back = stand.boom === null || level < 1e-9 ? 0 : stand.boom;
    const column = addScaled(centre, [axis[0] / (level || 1), axis[1] / (level || 1), 0], -back);
    const foot = [column[0], column[1], 0] as const;
    const marks: Mark[] = [];
    if (fromTop) {
      const ball = { kind: "sphere", name, centre: foot, radius: stand.feet, reflectance: 0 } as const;
      marks.push(area("stand", `${name} feet`, bodyOutline(sheet, ball)));
    } else {
      marks.push(
        line("stand", `${name} column`, onSheet(sheet, foot), onSheet(sheet, column)),
        line(
          "stand",
          `${name} feet`,
          onSheet(sheet, addScaled(foot, sheet.right, -stand.feet)),
          onSheet(sheet, addScaled(foot, sheet.right, stand.feet)),
        ),
      );
    }
    if (back > 0) marks.push(line("stand", `${name} boom`, onSheet(sheet, column), onSheet(sheet, centre)));
    return marks;
  });
}
