import { lightPlace, seenLight } from "../../scene/lit/seen.js";
import type { SceneSubject, Source } from "../../scene/types.js";
import { sizeFrom } from "../light/size.js";
import { keyOf, lightsOn, type Plan } from "../plan.js";
import type { ReportFace, ReportFaces } from "../schema/face.js";
import { threshold } from "../settings.js";
import { anglesFrom } from "./angles.js";
import { catchlight } from "./catchlight.js";
import { glareOf } from "./glasses.js";
import { noseShadow, widest } from "./nose.js";
import { type PatternGap, patternGaps } from "./pattern.js";
import { sideOfFace } from "./side.js";

/** What the lights do on every face: pattern and side of the key, and of each light its nose shadow and catchlight. */
export function reportFaces(plan: Plan): ReportFaces {
  return plan.scene.subjects.map((subject) => faceRow(plan, subject));
}

const moveTo = ({ name, azimuth, elevation }: PatternGap): ReportFace["next"] => ({
  name,
  azimuth,
  elevation,
});

function faceRow(plan: Plan, subject: SceneSubject): ReportFace {
  const { scene } = plan;
  const key = keyOf(scene);
  const angles = key === null || !(key.energy > 0) ? null : anglesFrom(subject, lightPlace(key));
  const gaps = angles === null ? [] : patternGaps(angles);
  const [nearest, next] = gaps;
  const lens = scene.camera === null ? null : anglesFrom(subject, scene.camera.at);
  const side = angles === null ? "there is no key" : sideOfFace(angles, lens);
  const found = side === "short" || side === "broad" ? side : null;
  return {
    subject: subject.name,
    key: angles === null ? null : (key?.name ?? null),
    pattern: nearest !== undefined && nearest.off === 0 ? nearest.name : null,
    nearest: nearest === undefined ? null : moveTo(nearest),
    next: next === undefined ? null : moveTo(next),
    side: found,
    side_reason: found === null ? side : null,
    lights: lightsOn(scene).flatMap((source) => lightRow(plan, subject, source)),
  };
}

function lightRow(plan: Plan, subject: SceneSubject, light: Source): ReportFace["lights"] {
  const source = seenLight(light);
  const angles = anglesFrom(subject, source.centre);
  if (angles === null) return [];
  const wide = (sizeFrom(source, subject.face)?.equivalent ?? 0) > widest;
  const shadow = wide ? null : noseShadow(angles);
  const lip = threshold(plan.recipe, "nose_on_lip") * 1000;
  return [
    {
      light: light.name,
      azimuth: angles.azimuth,
      elevation: angles.elevation,
      nose_shadow:
        shadow === null
          ? null
          : { side: shadow.side * 1000, drop: shadow.drop * 1000, on_lip: shadow.drop * 1000 > lip },
      catchlight: inEye(plan, subject, source),
      glare: inGlasses(plan, subject, source),
    },
  ];
}

type OfLight = ReportFace["lights"][number];

function inEye({ scene, recipe }: Plan, subject: SceneSubject, source: Source): OfLight["catchlight"] {
  const [lid, side] = [threshold(recipe, "catchlight_lid"), threshold(recipe, "catchlight_side")];
  const found = scene.camera === null ? null : catchlight(subject, scene.camera, source, lid, side);
  return found === null
    ? null
    : {
        hour: found.hour,
        offset: found.share,
        size: found.size,
        seen: found.seen,
        reason: found.reason,
      };
}

function inGlasses({ scene, recipe }: Plan, subject: SceneSubject, source: Source): OfLight["glare"] {
  if (scene.camera === null || subject.spectacles === null) return null;
  const found = glareOf(subject, scene.camera, source, subject.spectacles);
  if (found === null) return null;
  const { off, half } = found;
  return { off, half, seen: off < half + threshold(recipe, "glare_margin") };
}
