import { findRoot } from "../../math/roots.js";
import type { Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { between } from "../geometry/crossing.js";
import { elevationOf } from "../geometry/directions.js";
import { lightsOn, type Plan } from "../plan.js";
import { ceilTo } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { fitsRoom } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

/** The least height above its own at which a lamp clears whatever stands in the way, to a centimetre; null up to 6 m. */
function clearHeight(
  { scene }: Plan,
  source: Source,
  face: readonly [number, number, number],
): number | null {
  const blocked = (height: number): number =>
    between(scene, atHeight(source, height).centre, face) === null ? -1 : 1;
  if (blocked(6) > 0) return null;
  const height = findRoot(blocked, source.centre[2], 6, 1e-4);
  if (height === undefined) return null;
  const rounded = ceilTo(height + 0.005, 0.01);
  return blocked(rounded) < 0 ? rounded : null;
}

/** A piece of the set stands between a light and a face. */
export const panelShadesLight: Rule = {
  code: "panel-shades-light",
  thresholds: [],
  safety: false,
  page: {
    when: "The straight line from the centre of a light that is on to a subject's face goes through a flat, card, panel, paper, scrim, table or box. Only that line is tried; background lights are not asked.",
    means:
      "The face lies in the shade of the set. The readings of this report do not know it: nothing hides a light in this version.",
    todo: "Raise the light over the edge, open the flat, or move one of the two.",
    source: "Geometry.",
  },
  check: (plan) => {
    const { scene } = plan;
    const onPeople = lightsOn(scene).filter((source) => source.role !== "background");
    return onPeople.flatMap((source) =>
      scene.subjects.flatMap((subject): RuleFinding[] => {
        const piece = between(scene, source.centre, subject.face);
        if (piece === null) return [];
        const height = clearHeight(plan, source, subject.face);
        const raised = height === null ? null : atHeight(source, height);
        const remedy =
          raised === null || height === null || !fitsRoom(scene, raised)
            ? `Move ${source.name} or ${piece.name} to the side.`
            : `Raise ${source.name} to ${sayLength(height)}, where it clears the edge at ${sayAngle(elevationOf(subject.face, raised.centre))} to the face; or move one of the two.`;
        const face = subject.name === "" ? "the face" : `${subject.name}'s face`;
        const cloth = piece.kind === "scrim";
        return [
          {
            severity: cloth ? "note" : "stop",
            message: cloth
              ? `${source.name} shines through ${piece.name} at ${face}: what the cloth takes and spreads is not computed.`
              : `${piece.name} stands between ${source.name} and ${face}.`,
            remedy: cloth ? `Describe the lit cloth as the light: its size, and one reading.` : remedy,
            about: source.name,
          },
        ];
      }),
    );
  },
};
