import type { SceneSubject, Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { elevationOf } from "../geometry/directions.js";
import { type Hidden, hiddenBySet } from "../light/set-hides.js";
import { lightsOn, type Plan } from "../plan.js";
import { sayAngle, sayLength, sayPercent, sayStops } from "../say/quantity.js";
import { ownerOf } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { clearHeight } from "./clear-height.js";
import { fitsRoom } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

function remedyFor({ scene }: Plan, source: Source, subject: SceneSubject, { piece }: Hidden): string {
  const name = ownerOf(piece.name);
  if (piece.kind === "scrim") {
    return `To shine through it, say \`through: ${name}\` in ${source.name}; else move one of the two.`;
  }
  const height = clearHeight(scene, source, subject.face);
  const raised = height === null ? null : atHeight(source, height);
  if (raised === null || height === null || !fitsRoom(scene, raised)) {
    return `Move ${source.name} or ${name} to the side.`;
  }
  return `Raise ${source.name} to ${sayLength(height)}, where it clears the edge at ${sayAngle(elevationOf(subject.face, raised.centre))} to the face; or move one of the two.`;
}

function lossOf(plan: Plan, source: Source, subject: SceneSubject): RuleFinding[] {
  const hidden = hiddenBySet(plan.scene, source, subject.face);
  if (hidden === null) return [];
  const whole = hidden.share > 1 - 1e-6;
  const loss = whole ? Number.POSITIVE_INFINITY : -Math.log2(1 - hidden.share);
  if (loss <= threshold(plan.recipe, "panel_shade") + 1e-9) return [];
  const face = subject.name === "" ? "the face" : `${subject.name}'s face`;
  const name = ownerOf(hidden.piece.name);
  return [
    {
      severity: loss > threshold(plan.recipe, "panel_shade_stop") + 1e-9 ? "stop" : "check",
      message: whole
        ? `${name} stands between ${source.name} and ${face}: none of its straight light arrives.`
        : `${name} hides ${sayPercent(hidden.share)} of ${source.name} from ${face}, which loses ${sayStops(loss)} of it.`,
      remedy: remedyFor(plan, source, subject, hidden),
      about: source.name,
    },
  ];
}

/** A piece of the set hides a light from a face, wholly or in part. */
export const panelShadesKey: Rule = {
  code: "panel-shades-key",
  thresholds: ["panel_shade", "panel_shade_stop"],
  safety: false,
  page: {
    when: "Flats, cards, panels, paper, scrims, tables or boxes take more than `panel_shade` (0.3 stop) of the straight light of a light that is on from a subject's face; it is a stop above `panel_shade_stop` (1 stop). The part of the opening that is hidden counts, seen from the face. Background lights are not asked, nor heads that shine into a surface.",
    means:
      "The face lies in the shade of the set, or in the edge of it. The readings know it; the picture may not be meant so.",
    todo: "Raise the light over the edge, open the flat, or move one of the two.",
    source: "Geometry; the thresholds are common practice, no source.",
  },
  check: (plan) =>
    lightsOn(plan.scene)
      .filter((source) => source.role !== "background" && source.patch === undefined)
      .flatMap((source) => plan.scene.subjects.flatMap((subject) => lossOf(plan, source, subject))),
};
