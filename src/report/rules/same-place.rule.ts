import { addScaled } from "../../math/vector.js";
import type { Scene, ScenePolygon } from "../../scene/types.js";
import { coincidentPieces } from "../geometry/coincident.js";
import { sayCentimetres } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import type { Rule, RuleFinding } from "./rule.js";

/** How far a piece is moved at most to lie free, in steps of 1 cm. */
const STEPS = 50;

/** The polygons of a scene with one piece moved back from its front. */
function movedBack({ polygons }: Scene, piece: string, by: number): readonly ScenePolygon[] {
  const front = polygons.find(({ name }) => ownerOf(name) === piece)?.normal ?? [0, -1, 0];
  return polygons.map((row) =>
    ownerOf(row.name) === piece
      ? { ...row, vertices: row.vertices.map((at) => addScaled(at, front, -by)) }
      : row,
  );
}

/** The least move backwards, m, that brings a piece out of all others; null where none in reach does. */
function least(scene: Scene, piece: string): number | null {
  for (let i = 1; i <= STEPS; i++) {
    const there = coincidentPieces({ polygons: movedBack(scene, piece, i / 100) });
    if (there.every((pair) => !pair.includes(piece))) return i / 100;
  }
  return null;
}

/** Two sheets of the set lie in the same place. */
export const samePlace: Rule = {
  code: "same-place",
  thresholds: [],
  safety: false,
  page: {
    when: "Flats, cards, papers, panels, scrims or discs of the set lie in one plane, within a tenth of a millimetre, and on each other. Sheets that only touch at an edge are fine.",
    means: "Which of the two is in front is not said, so light and picture take either.",
    todo: "Move one of them before the other, or take one out.",
    source: "None is needed.",
  },
  check: ({ scene }) =>
    coincidentPieces(scene).map(([first, second]): RuleFinding => {
      const by = least(scene, second);
      const move =
        by === null ? `Move ${second} away` : `Move ${second} ${sayCentimetres(by)} back from its front`;
      return {
        severity: "check",
        message: `${first} and ${second} lie in the same place: it is not known which is in front.`,
        remedy: `${move}; or take one of them out.`,
        about: second,
      };
    }),
};
