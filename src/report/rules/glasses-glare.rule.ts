import { seenLight } from "../../scene/lit/seen.js";
import type { SceneCamera, SceneSubject, Source } from "../../scene/types.js";
import { atHeight, withSource } from "../change/move-source.js";
import { glareOf } from "../face/glasses.js";
import { lightsOn, type Plan } from "../plan.js";
import { ceilTo, fixed } from "../say/number.js";
import { sayAngle, sayLength } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { fitsRoom } from "./key-light.js";
import { powerWords } from "./power-words.js";
import type { Rule, RuleFinding } from "./rule.js";

/** Spectacles are leant further forward by no more than this, deg. */
const LEAN = 15;
/** Steps of 5 cm in which a higher place is looked for, and how many. */
const STEP = 0.05;
const STEPS = 60;

function isSeen(
  subject: SceneSubject,
  camera: SceneCamera,
  source: Source,
  tilt: number,
  margin: number,
): boolean {
  const found = glareOf(subject, camera, source, tilt);
  return found !== null && found.off < found.half + margin - 1e-9;
}

function raised(
  plan: Plan,
  subject: SceneSubject,
  camera: SceneCamera,
  source: Source,
  margin: number,
): Source | null {
  if (source.patch !== undefined) return null;
  for (let i = 1; i <= STEPS; i++) {
    const higher = atHeight(source, ceilTo(source.centre[2] + i * STEP, 0.01));
    if (!fitsRoom(plan.scene, higher)) return null;
    if (!isSeen(subject, camera, higher, subject.spectacles ?? 0, margin)) return higher;
  }
  return null;
}

function remedyOf(
  plan: Plan,
  subject: SceneSubject,
  camera: SceneCamera,
  source: Source,
  margin: number,
): string {
  const ways: string[] = [];
  const higher = raised(plan, subject, camera, source, margin);
  if (higher !== null) {
    ways.push(
      `raise ${source.name} to ${sayLength(higher.centre[2])}${powerWords(plan, withSource(plan, plan.scene.sources.indexOf(source), higher), source)}`,
    );
  }
  const tilt = subject.spectacles ?? 0;
  for (let more = 1; more <= LEAN; more++) {
    if (isSeen(subject, camera, seenLight(source), tilt + more, margin)) continue;
    ways.push(`lift the temples so that the glasses lean forward by ${fixed(tilt + more, 0)} deg`);
    break;
  }
  ways.push("move it further round, or have the face turned");
  const text = ways.join(", or ");
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
}

/** Spectacles show the lens a lamp. */
export const glassesGlare: Rule = {
  code: "glasses-glare",
  thresholds: ["glare_margin"],
  safety: false,
  page: {
    when: "A subject has `spectacles`, and a light lies within half of its own angular width plus `glare_margin` (2 deg) of the direction to which flat glasses at that tilt mirror the lens.",
    means: "A white patch covers an eye.",
    todo: "Raise the light, lean the glasses forward (a tilt of 5 deg moves the mirrored direction by 10), or turn the face. Curved glasses mirror wider: try it on the day.",
    source: "The mirror law, for flat glass; the margin is common practice, no source.",
  },
  check: (plan) => {
    const { scene, recipe } = plan;
    const { camera } = scene;
    if (camera === null) return [];
    const margin = threshold(recipe, "glare_margin");
    return scene.subjects.flatMap((subject): RuleFinding[] => {
      const { spectacles } = subject;
      if (spectacles === null) return [];
      return lightsOn(scene).flatMap((source): RuleFinding[] => {
        const light = seenLight(source);
        const found = glareOf(subject, camera, light, spectacles);
        if (found === null || !isSeen(subject, camera, light, spectacles, margin)) return [];
        const whose = subject.name === "" ? "The spectacles" : `${subject.name}'s spectacles`;
        return [
          {
            severity: "check",
            message: `${whose} show ${source.name}: it lies ${sayAngle(found.off)} from where they mirror the lens to, and is ${sayAngle(2 * found.half)} wide.`,
            remedy: remedyOf(plan, subject, camera, source, margin),
            about: source.name,
          },
        ];
      });
    });
  },
};
