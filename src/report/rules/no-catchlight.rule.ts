import { findRoot } from "../../math/roots.js";
import { lightPlace, seenLight } from "../../scene/lit/seen.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";
import { atHeight } from "../change/move-source.js";
import { anglesFrom } from "../face/angles.js";
import { catchlight, liftOf } from "../face/catchlight.js";
import { lightsOn, type Plan } from "../plan.js";
import { floorTo, list } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { fitsRoom, keyLight } from "./key-light.js";
import type { Rule, RuleFinding } from "./rule.js";

function remedyOf(plan: Plan, subject: SceneSubject): string {
  const key = keyLight(plan);
  const low = "or bring a light or a bright card below the eyes, near the lens";
  if (key === null || key.source.patch !== undefined) return `Bring a light in from the front, ${low}.`;
  const lid = threshold(plan.recipe, "catchlight_lid");
  const { camera } = plan.scene;
  const { centre } = key.source;
  const lifted = (height: number): number =>
    camera === null ? 0 : (liftOf(subject, camera.at, [centre[0], centre[1], height]) ?? 0);
  if (camera !== null && lifted(centre[2]) > lid) {
    const most = findRoot((height) => lifted(height) - lid, 0, centre[2], 1e-6);
    const height = most === undefined ? null : floorTo(most, 0.01);
    const lower = height === null ? null : atHeight(key.source, height);
    const side = threshold(plan.recipe, "catchlight_side");
    const seen = lower === null ? null : catchlight(subject, camera, lower, lid, side);
    if (height !== null && lower !== null && seen?.seen === true && fitsRoom(plan.scene, lower))
      return `Lower ${key.source.name} to ${sayLength(height)}, ${low}.`;
  }
  return `Bring ${key.source.name} round to the front of the face, ${low}.`;
}

/** Where a light stands from a face: `key 62 deg up and 10 deg to the side`, and how high above the line to the lens. */
function placeWords(source: Source, subject: SceneSubject, camera: SceneCamera, lid: number): string {
  const place = lightPlace(source);
  const angles = anglesFrom(subject, place);
  if (angles === null) return source.name;
  if (Math.abs(angles.azimuth) > 179.5) return `${source.name} straight behind the head`;
  const lift = liftOf(subject, camera.at, seenLight(source).centre) ?? 0;
  const high = lift > lid ? `, ${sayAngle(lift)} above the line to the lens in the eye` : "";
  return `${source.name} ${sayAngle(angles.elevation)} up and ${sayAngle(Math.abs(angles.azimuth))} to the side${high}`;
}

/** No light is mirrored in the eyes. */
export const noCatchlight: Rule = {
  code: "no-catchlight",
  thresholds: ["catchlight_lid", "catchlight_side"],
  safety: false,
  page: {
    when: "A camera sees a subject's face, lights are on, and none of them shows in the eyes: each shows higher in the eye than a light `catchlight_lid` (55 deg) above the line to the lens does, where the upper lid, which follows that line, hides it, further round than `catchlight_side` (80 deg) from the nose line, or so far from the lens that its image lies beside the iris. Bright cards and walls are not counted.",
    means: "Eyes without a bright point look dull, as if nobody were in.",
    todo: "Lower the key or bring it to the front, or hold a card below the face.",
    source:
      "The mirror law with a cornea of 7.8 mm radius and an iris of 11.7 mm, from memory; the thresholds are common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { camera } = scene;
    const lights = lightsOn(scene);
    if (camera === null || lights.length === 0) return [];
    const [lid, side] = [threshold(recipe, "catchlight_lid"), threshold(recipe, "catchlight_side")];
    return scene.subjects.flatMap((subject): RuleFinding[] => {
      const lens = anglesFrom(subject, camera.at);
      // From the side and from behind there are no eyes to see.
      if (lens === null || Math.abs(lens.azimuth) > 60) return [];
      const found = lights.map((source) => catchlight(subject, camera, seenLight(source), lid, side));
      if (found.some((row) => row?.seen === true)) return [];
      const places = lights.map((source) => placeWords(source, subject, camera, lid));
      const whose = subject.name === "" ? "the eyes" : `the eyes of ${subject.name}`;
      return [
        {
          severity: "note",
          message: `No light shows in ${whose}: ${list(places)}.`,
          remedy: remedyOf(plan, subject),
          about: subject.name === "" ? null : subject.name,
        },
      ];
    });
  },
};
