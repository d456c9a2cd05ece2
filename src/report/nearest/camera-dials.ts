import type { CameraModel } from "../../model/types.js";
import type { ClaimModel } from "../../model/values.js";
import type { SceneCamera } from "../../scene/types.js";
import { fNumber, iso } from "../../units/make.js";
import { nominalFNumber, nominalIso } from "../../units/nominal.js";
import type { Quantity } from "../../units/quantity.js";
import { rebuiltWith } from "../change/rebuild.js";
import type { Plan } from "../plan.js";
import { apertureAtLeast, apertureAtMost, isoAtLeast, isoAtMost } from "../say/nominal.js";
import { asMeasured, byRatio, type Dial, nearSeries } from "./dial.js";

/** ISO values that any camera has and that one would use with flash (common practice, no source). */
const ORDINARY = { from: 100, to: 6400 } as const;

/** Aperture and sensitivity of the camera, by the settings of the series. They change no light. */
export function cameraDials(plan: Plan, claims: readonly ClaimModel[]): readonly Dial[] {
  const { camera } = plan.scene;
  if (camera === null) return [];
  const turned = (part: Partial<SceneCamera>): Plan => ({
    ...plan,
    scene: { ...plan.scene, camera: { ...camera, ...part } },
  });
  const rebuilt = (part: (own: CameraModel) => Partial<CameraModel>): Plan => {
    const { recipe } = plan;
    if (recipe.camera === null) return plan;
    return rebuiltWith(plan, { ...recipe, camera: { ...recipe.camera, ...part(recipe.camera) } });
  };
  const kept = <Q extends Quantity>(value: Q, before: Quantity | undefined): Q =>
    before === undefined ? value : asMeasured(value, before);
  const dials: Dial[] = [];
  if (camera.aperture !== null) {
    dials.push({
      path: "camera.aperture",
      now: camera.aperture,
      low: 1,
      high: 64,
      unit: "f",
      ...byRatio(0.5),
      near: nearSeries(
        (value) => apertureAtLeast(value)?.exact,
        (value) => apertureAtMost(value)?.exact,
      ),
      turned: (aperture) => ({ plan: turned({ aperture }), claims }),
      rebuilt: (value) => ({
        plan: rebuilt((own) => ({ aperture: kept(fNumber(nominalFNumber(value) ?? value), own.aperture) })),
        claims,
      }),
      say: (value) => `f/${nominalFNumber(value) ?? value}`,
    });
  }
  if (camera.iso !== null) {
    dials.push({
      path: "camera.sensitivity",
      now: camera.iso,
      low: ORDINARY.from,
      high: ORDINARY.to,
      unit: "ISO",
      ...byRatio(1),
      near: nearSeries(
        (value) => isoAtLeast(value)?.exact,
        (value) => isoAtMost(value)?.exact,
      ),
      turned: (value) => ({ plan: turned({ iso: value }), claims }),
      rebuilt: (value) => ({
        plan: rebuilt((own) => ({ sensitivity: kept(iso(nominalIso(value) ?? value), own.sensitivity) })),
        claims,
      }),
      say: (value) => `ISO ${nominalIso(value) ?? value}`,
    });
  }
  return dials;
}
