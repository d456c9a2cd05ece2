import type { CameraModel } from "../../model/types.js";
import type { ClaimModel } from "../../model/values.js";
import type { SceneCamera } from "../../scene/types.js";
import { fNumber, iso } from "../../units/make.js";
import { nominalFNumber, nominalIso } from "../../units/nominal.js";
import { rebuiltWith } from "../change/rebuild.js";
import type { Plan } from "../plan.js";
import { apertureAtLeast, apertureAtMost, isoAtLeast, isoAtMost } from "../say/nominal.js";
import { byRatio, type Dial } from "./dial.js";

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
  const rebuilt = (part: Partial<CameraModel>): Plan => {
    const { recipe } = plan;
    return recipe.camera === null
      ? plan
      : rebuiltWith(plan, { ...recipe, camera: { ...recipe.camera, ...part } });
  };
  const dials: Dial[] = [];
  if (camera.aperture !== null) {
    dials.push({
      path: "camera.aperture",
      now: camera.aperture,
      low: 1,
      high: 64,
      unit: "f",
      ...byRatio(0.5),
      near: (value) => settings(apertureAtLeast(value)?.exact, apertureAtMost(value)?.exact),
      turned: (aperture) => ({ plan: turned({ aperture }), claims }),
      rebuilt: (value) => ({ plan: rebuilt({ aperture: fNumber(nominalFNumber(value) ?? value) }), claims }),
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
      near: (value) => settings(isoAtLeast(value)?.exact, isoAtMost(value)?.exact),
      turned: (value) => ({ plan: turned({ iso: value }), claims }),
      rebuilt: (value) => ({ plan: rebuilt({ sensitivity: iso(nominalIso(value) ?? value) }), claims }),
      say: (value) => `ISO ${nominalIso(value) ?? value}`,
    });
  }
  return dials;
}

const settings = (...exact: readonly (number | undefined)[]): readonly number[] =>
  exact.filter((value) => value !== undefined);
