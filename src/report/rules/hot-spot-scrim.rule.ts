import { findRoot } from "../../math/roots.js";
import { distance, scale, subtract } from "../../math/vector.js";
import type { ClothLight, Scene, Source } from "../../scene/types.js";
import { headAt } from "../change/head-behind-cloth.js";
import { lightsOn, type Plan } from "../plan.js";
import { ceilTo } from "../say/number.js";
import { sayLength, sayPercent } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { fitsRoom } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule, RuleFinding } from "./rule.js";

/** How much of the shorter side of a cloth the evenly lit part takes. */
function litShare(source: Source, { width, height }: ClothLight): number {
  const { shape } = source;
  return shape.kind === "rectangle" ? Math.min(shape.width, shape.height) / Math.min(width, height) : 1;
}

/** The head behind a light's cloth. */
const headOf = (scene: Scene, light: string): Source | null =>
  scene.sources.find((row) => row.spillOf === light) ?? null;

/** Farther than this a head is not moved, m. */
const FARTHEST = 8;

function remedyFor(plan: Plan, source: Source, least: number): string {
  const wider = "Take a wider dish or a smaller cloth.";
  const head = headOf(plan.scene, source.name);
  if (head === null) return wider;
  const middle = source.centre;
  const now = distance(head.centre, middle);
  const direction = scale(subtract(head.centre, middle), 1 / now);
  const shareAt = (away: number): number => {
    const { scene } = headAt(plan, source.name, middle, direction, away);
    const cloth = scene.sources.find((row) => row.name === source.name);
    return cloth?.cloth === undefined ? 0 : litShare(cloth, cloth.cloth);
  };
  const found = findRoot((away) => shareAt(away) - least, now, FARTHEST, 1e-3);
  if (found === undefined) return wider;
  const away = ceilTo(found, 0.01);
  const there = headAt(plan, source.name, middle, direction, away);
  const moved = headOf(there.scene, source.name);
  if (moved === null || !fitsRoom(plan.scene, moved)) {
    return `The head would have to stand ${sayLength(away)} from the cloth, which this room has not. ${wider}`;
  }
  return `Put the head ${sayLength(away)} from the cloth instead of ${sayLength(now)}${powerWords(plan, there, source)}; or take a wider dish.`;
}

/** A head lights only the middle of the cloth that it shines through. */
export const hotSpotScrim: Rule = {
  code: "hot-spot-scrim",
  thresholds: ["hot_spot"],
  safety: false,
  page: {
    when: "A head shines through a cloth, and the evenly lit patch that stands for its light takes less than `hot_spot` (70 %) of the cloth's shorter side.",
    means:
      "The cloth glows in the middle and is dark at its rim. What counts for the edges of shadows is the bright part: the light is as hard as a smaller cloth.",
    todo: "Move the head back, or take a wider dish.",
    source:
      "The patch is the even rectangle with the same light and the same spread, (sum of E)^2 / (sum of E^2); the threshold is common practice, no source.",
  },
  check: (plan) =>
    lightsOn(plan.scene).flatMap((source): RuleFinding[] => {
      const { cloth, shape } = source;
      if (cloth === undefined || shape.kind !== "rectangle") return [];
      const share = litShare(source, cloth);
      const least = threshold(plan.recipe, "hot_spot");
      if (share >= least - 1e-9) return [];
      return [
        {
          severity: "check",
          message: `${source.name} lights only ${sayPercent(share)} of each side of ${cloth.scrim}: it works like a cloth of ${sayLength(shape.width)} x ${sayLength(shape.height)}.`,
          remedy: remedyFor(plan, source, least),
          about: source.name,
        },
      ];
    }),
};
