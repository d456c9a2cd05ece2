import type { Vec3 } from "../../core/vector.js";
import type { ScenePolygon, Source } from "../../scene/types.js";
import { atHeight, withSource } from "../change/move-source.js";
import type { Plan } from "../plan.js";
import { ceilTo } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { ownerOf, sayOwner } from "../say/surfaces.js";
import { threshold } from "../settings.js";
import { type Cast, castFor } from "../thrown/cast.js";
import { isShell } from "../thrown/plane.js";
import { toSurface } from "../thrown/seams.js";
import { type Shadow, seenRings } from "../thrown/shadows-of.js";
import { fitsRoom, type KeyLight, keyLight } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule } from "./rule.js";

/** A shadow that goes on past a paper. */
interface Past {
  readonly who: string;
  readonly paper: string;
  /** The floor or wall on which it goes on. */
  readonly on: string;
  /** How far from the paper it reaches there, inside the frame, m. */
  readonly far: number;
}

/** The shadow of a subject that runs furthest past a paper on which it falls as well, in the frame; null without one. */
export function furthestPast(cast: Cast, source: Source): Past | null {
  const { scene } = cast;
  const papers = scene.polygons.filter(({ kind }) => kind === "paper");
  if (papers.length === 0 || scene.camera === null) return null;
  let worst: Past | null = null;
  for (const person of cast.throwers.people) {
    const shadows = cast.shadows(source, person);
    for (const paper of new Set(papers.map(({ name }) => ownerOf(name)))) {
      if (!shadows.some(({ surface }) => surface === paper)) continue;
      const own = papers.filter(({ name }) => ownerOf(name) === paper);
      for (const shadow of shadows.filter(isOnRoom)) {
        const far = shadow.parts
          .flatMap((part) => seenRings(part).flat())
          .reduce((most, place) => Math.max(most, awayFrom(own, place)), 0);
        if (far > (worst?.far ?? 0)) worst = { who: person.name, paper, on: shadow.surface, far };
      }
    }
  }
  return worst;
}

const isOnRoom = ({ parts }: Shadow): boolean => parts.some(({ ground }) => isShell(ground.polygon));

function awayFrom(polygons: readonly ScenePolygon[], place: Vec3): number {
  return polygons.reduce(
    (least, polygon) => Math.min(least, toSurface(polygon, place)),
    Number.POSITIVE_INFINITY,
  );
}

/** Steps of 10 cm in which a higher place for the key is looked for, and how many. */
const STEP = 0.1;
const STEPS = 20;

function raised(plan: Plan, { source, index }: KeyLight, most: number): Source | null {
  if (source.patch !== undefined) return null;
  for (let i = 1; i <= STEPS; i++) {
    const higher = atHeight(source, ceilTo(source.centre[2] + i * STEP, 0.01));
    if (!fitsRoom(plan.scene, higher)) return null;
    const there = withSource(plan, index, higher);
    if ((furthestPast(castFor(there), higher)?.far ?? 0) <= most) return higher;
  }
  return null;
}

/** A shadow runs past the edge of the paper inside the picture. */
export const shadowOffPaper: Rule = {
  code: "shadow-off-paper",
  thresholds: ["off_paper"],
  safety: false,
  page: {
    when: "The shadow that the key throws of a subject falls on a paper and goes on past its edge, on floor or wall, by more than `off_paper` (10 cm) inside the frame.",
    means: "The picture shows where the paper ends, with a shadow that breaks there.",
    todo: "Raise the key, which shortens the shadow, use a longer or wider paper, or crop tighter.",
    source: "Geometry, by the middle of the light; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    const past = key === null ? null : furthestPast(castFor(plan), key.source);
    const most = threshold(plan.recipe, "off_paper");
    if (key === null || past === null || past.far <= most + 1e-9) return [];
    const higher = raised(plan, key, most);
    let lift = "";
    if (higher !== null) {
      lift = `Raise ${key.source.name} to ${sayLength(higher.centre[2])}${powerWords(plan, withSource(plan, key.index, higher), key.source)}, or lay `;
    }
    const whose = past.who === "subject" ? "The subject's shadow" : `The shadow of ${past.who}`;
    return [
      {
        severity: "check",
        message: `${whose} runs past ${past.paper} by ${sayLength(past.far)} on ${sayOwner(past.on)}, in the picture.`,
        remedy: `${lift === "" ? "Lay " : lift}${sayLength(ceilTo(past.far, 0.05))} more of paper there, or crop tighter.`,
        about: past.paper,
      },
    ];
  },
};
