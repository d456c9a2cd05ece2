import type { CameraModel } from "../../model/types.js";
import type { ClaimModel, Expr } from "../../model/values.js";
import { rebuiltWith } from "../change/rebuild.js";
import type { Plan } from "../plan.js";
import { fixed } from "../say/number.js";
import { sayLength } from "../say/quantity.js";
import { byRatio, type Dial, nearSteps } from "./dial.js";

/** Results that say what the picture shows: for them one changes the lens or goes nearer, and for no others. */
const ofPicture: ReadonlySet<string> = new Set([
  "coverage",
  "uncovered",
  "subject_share",
  "hand_limit",
  "headroom",
]);

function asksForPicture(expr: Expr): boolean {
  switch (expr.kind) {
    case "result":
      return ofPicture.has(expr.name);
    case "sum":
      return expr.terms.some(({ value }) => asksForPicture(value));
    case "product":
      return expr.factors.some(({ value }) => asksForPicture(value));
    case "negation":
      return asksForPicture(expr.operand);
    default:
      return false;
  }
}

/** Lenses that people own, m (common practice, no source). */
const LENSES = { from: 0.014, to: 0.4 } as const;
/** Nobody puts a camera nearer to the mark than this, or further away, m. */
const PLACES = { from: 0.5, to: 15 } as const;

/** Focal length and tape of the camera, for claims about what the picture shows. */
export function pictureDials(plan: Plan, claims: readonly ClaimModel[]): readonly Dial[] {
  const { recipe, scene } = plan;
  const { camera } = recipe;
  if (camera === null || !claims.some(({ value }) => asksForPicture(value))) return [];
  const rebuilt = (part: Partial<CameraModel>) => ({
    plan: rebuiltWith(plan, { ...recipe, camera: { ...camera, ...part } }),
    claims,
  });
  const dials: Dial[] = [];
  const focal = camera.focal_length;
  if (focal !== undefined) {
    const turned = (value: number) =>
      scene.camera === null
        ? { plan, claims }
        : { plan: { ...plan, scene: { ...scene, camera: { ...scene.camera, focalLength: value } } }, claims };
    dials.push({
      path: "camera.focal_length",
      now: focal.value,
      low: LENSES.from,
      high: LENSES.to,
      unit: "m",
      ...byRatio(0.25),
      near: nearSteps(0.001),
      turned,
      rebuilt: (value) => rebuilt({ focal_length: { ...focal, value } }),
      say: (value) => `${fixed(value * 1000, 0)} mm`,
    });
  }
  const tape = camera.distance;
  if (tape !== undefined && tape.from === null && camera.position === undefined) {
    const at = (value: number) => rebuilt({ distance: { ...tape, length: { ...tape.length, value } } });
    dials.push({
      path: "camera.distance",
      now: tape.length.value,
      low: PLACES.from,
      high: PLACES.to,
      unit: "m",
      ...byRatio(0.25),
      near: nearSteps(0.1, 0.01),
      turned: at,
      rebuilt: at,
      say: sayLength,
    });
  }
  return dials;
}
