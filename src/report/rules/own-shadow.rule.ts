import type { Vec3 } from "../../core/vector.js";
import { rotateAbout } from "../../math/rotation.js";
import { add, addScaled, dot, normalise, subtract } from "../../math/vector.js";
import { seenLight } from "../../scene/lit/seen.js";
import type { Scene, SceneCamera, SceneSubject } from "../../scene/types.js";
import { bearingOf } from "../geometry/directions.js";
import { inFrame } from "../geometry/frame.js";
import { lightsOn } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import type { Rule, RuleFinding } from "./rule.js";
import { whose } from "./set-top-words.js";

/** The person with the camera: a post with round ends, m (common practice, no source). */
const WIDE = 0.25;
const BACK = 0.35;
const ABOVE = 0.12;

/** The axis of that post: it stands behind the lens, the eye at its height. */
function photographer({ at, forward }: SceneCamera): readonly [Vec3, Vec3] {
  const level = normalise([forward[0], forward[1], 0]) ?? [0, 1, 0];
  const [x, y] = addScaled(at, level, -BACK);
  const top = Math.max(WIDE, at[2] + ABOVE - WIDE);
  return [
    [x, y, Math.min(WIDE, top)],
    [x, y, top],
  ];
}

/** The least distance between two straight lines of finite length (Sunday's form of the closest approach). */
function apart(p: Vec3, q: Vec3, a: Vec3, b: Vec3): number {
  const [u, v, w] = [subtract(q, p), subtract(b, a), subtract(p, a)];
  const [uu, uv, vv, uw, vw] = [dot(u, u), dot(u, v), dot(v, v), dot(u, w), dot(v, w)];
  const clamp = (t: number): number => Math.min(1, Math.max(0, t));
  const det = uu * vv - uv * uv;
  let s = det > 1e-12 ? clamp((uv * vw - vv * uw) / det) : 0;
  const t = vv > 0 ? clamp((uv * s + vw) / vv) : 0;
  s = uu > 0 ? clamp((uv * t - uw) / uu) : 0;
  const gap = subtract(addScaled(p, u, s), addScaled(a, v, t));
  return Math.sqrt(dot(gap, gap));
}

/** The places of a subject, by their words, that the photographer takes a light from, of those in the picture. */
function shaded(scene: Scene, camera: SceneCamera, subject: SceneSubject, light: Vec3): readonly string[] {
  const [a, b] = photographer(camera);
  const prefix = scene.subjects[0] === subject ? "" : `${subject.name}.`;
  return ["face", "chest", "knee", "feet"].filter((word) => {
    const place = scene.landmarks.get(prefix + word)?.at;
    return place !== undefined && inFrame(camera, place) && apart(light, place, a, b) < WIDE;
  });
}

/** The photographer stands in the light. */
export const ownShadow: Rule = {
  code: "own-shadow",
  thresholds: [],
  safety: false,
  page: {
    when: "The straight line from the middle of a light to the face, chest, knee or feet of a subject, where these are in the picture, passes through the person with the camera: a post of 50 cm, 35 cm behind the lens, that ends 12 cm above it.",
    means: "The one who takes the picture throws a shadow into it.",
    todo: "Move the light to the side or raise it; or step aside and let the camera stand by itself.",
    source: "Geometry; the size of the post is common practice, no source.",
  },
  check: ({ scene }) => {
    const { camera } = scene;
    if (camera === null) return [];
    return lightsOn(scene).flatMap((source): readonly RuleFinding[] => {
      const light = seenLight(source).centre;
      return scene.subjects.flatMap((subject): readonly RuleFinding[] => {
        const places = shaded(scene, camera, subject, light);
        if (places.length === 0) return [];
        return [
          {
            severity: "check",
            message: `Behind the camera one stands in the light of ${source.name}: it does not reach the ${places.join(", ")} of ${whose(subject)}.`,
            remedy: remedyOf(scene, camera, subject, light),
            about: source.name,
          },
        ];
      });
    });
  },
};

/** The least turn round the subject, and the least rise, at which the way is free; both tried. */
function remedyOf(scene: Scene, camera: SceneCamera, subject: SceneSubject, light: Vec3): string {
  const free = (at: Vec3): boolean => shaded(scene, camera, subject, at).length === 0;
  const ways: string[] = [];
  const away = subtract(light, subject.place);
  for (let turn = 1; turn <= 60 && ways.length === 0; turn++) {
    for (const sign of [1, -1]) {
      const at = add(subject.place, rotateAbout(away, [0, 0, 1], (sign * turn * Math.PI) / 180));
      if (ways.length > 0 || !free(at)) continue;
      const side = bearingOf(subject.place, at) ?? 0;
      ways.push(`move the light to ${sayAngle(Math.abs(side))} at camera-${side < 0 ? "left" : "right"}`);
    }
  }
  for (let step = 1; step <= 60; step++) {
    const at: Vec3 = [light[0], light[1], light[2] + step * 0.05];
    if (scene.room !== null && at[2] > scene.room.height - 0.25) break;
    if (!free(at)) continue;
    ways.push(`raise it by ${fixed(step * 5, 0)} cm to ${sayLength(at[2])}`);
    break;
  }
  const words = ways.join(", or ");
  return words === ""
    ? "Let the camera stand by itself and step aside."
    : `${words.slice(0, 1).toUpperCase()}${words.slice(1)}.`;
}
