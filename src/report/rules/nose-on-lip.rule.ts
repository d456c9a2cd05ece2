import type { Vec3 } from "../../core/vector.js";
import { findRoot } from "../../math/roots.js";
import { lightPlace, seenLight } from "../../scene/lit/seen.js";
import type { SceneSubject } from "../../scene/types.js";
import { atHeight, withSource } from "../change/move-source.js";
import { turnedDown } from "../change/turn-head.js";
import { anglesFrom } from "../face/angles.js";
import { noseShadow, widest } from "../face/nose.js";
import { sizeFrom } from "../light/size.js";
import { faceWords, type Plan } from "../plan.js";
import { startWithLight } from "../say/light.js";
import { fixed, floorTo } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { type KeyLight, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** How far down the nose's shadow falls under a light at a place, m; null for a light from beside or behind. */
function dropAt(subject: SceneSubject, place: Vec3): number | null {
  const angles = anglesFrom(subject, place);
  return (angles === null ? null : noseShadow(angles))?.drop ?? null;
}

/** How the shadow is kept off the lip, worked out: the key lower, or its patch where it is turned to. */
function remedyFor(plan: Plan, key: KeyLight, most: number): string {
  const { source, subject } = key;
  const excess = (at: Vec3): number => (dropAt(subject, at) ?? 0) - most;
  const [x, y, z] = source.centre;
  const turned = turnedDown(plan.scene, source, key.face, excess);
  const height =
    source.patch === undefined
      ? findRoot((h) => excess([x, y, h]), Math.min(z, key.face[2]), z, 1e-6)
      : undefined;
  const there = turned?.there ?? (height === undefined ? null : atHeight(source, floorTo(height, 0.01)));
  if (there === null) return "Lower the light, have the chin raised, or use a larger one.";
  const words = turned?.words ?? `Lower ${source.name} to ${sayLength(there.centre[2])}`;
  const left = (dropAt(subject, lightPlace(there)) ?? 0) * 1000;
  return `${words} for ${fixed(left, 0)} mm${powerWords(plan, withSource(plan, key.index, there), source)}, or have the chin raised.`;
}

/** The nose throws its shadow as far as the mouth. */
export const noseOnLip: Rule = {
  code: "nose-on-lip",
  thresholds: ["nose_on_lip"],
  safety: false,
  page: {
    when: "The key is no wider than 45 deg from the first subject's face, and the shadow of the tip of the nose (25 mm proud) falls further down than `nose_on_lip` (2 cm): 25 mm tan(elevation) / cos(azimuth), both from the nose line. Of a light that shines into a surface the lit patch counts.",
    means: "The shadow of the nose touches the lip, and the mouth looks smeared or bearded.",
    todo: "Lower the key, have the chin raised, or use a larger light.",
    source: "Geometry; the size of the nose and the threshold are common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (key === null) return [];
    const { source, subject } = key;
    const most = threshold(plan.recipe, "nose_on_lip");
    const drop = dropAt(subject, lightPlace(source));
    const size = sizeFrom(seenLight(source), key.face)?.equivalent ?? 0;
    if (drop === null || drop <= most + 1e-9 || size > widest) return [];
    return [
      {
        severity: "check",
        message: `${startWithLight(source)} throws the shadow of the nose ${fixed(drop * 1000, 0)} mm down on ${faceWords(plan.scene)}: it reaches the mouth.`,
        remedy: remedyFor(plan, key, most),
        about: source.name,
      },
    ];
  },
};
