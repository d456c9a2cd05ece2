import { miredShift, shiftedTemperature } from "../../physics/mired.js";
import { fixed } from "../say/number.js";
import { sayKelvin } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** A white balance is set to a multiple of this, K. */
const STEP = 50;

/** The camera's white balance is not that of the key. */
export const whiteBalanceOff: Rule = {
  code: "white-balance-off",
  thresholds: ["off_balance"],
  safety: false,
  page: {
    when: "The colour of the key behind its gels differs from the camera's white balance by more than `off_balance` (30 mired). A check where the recipe sets no `balance`, so that 5600 K is assumed; a note where it sets one, since the tint may be meant.",
    means: "The whole picture comes out orange or blue.",
    todo: "Set the white balance to the key's colour, or gel the key; a tint that is meant is said by `balance`.",
    source:
      "Mired as the reciprocal of colour temperature: CIE; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const { camera } = plan.scene;
    const key = keyLight(plan);
    if (key === null || camera === null) return [];
    const { name, colour } = key.source;
    const shift = miredShift(camera.balance, colour);
    if (Math.abs(shift) <= threshold(plan.recipe, "off_balance") + 1e-9) return [];
    const said = plan.recipe.camera?.balance !== undefined;
    const set = Math.round(colour / STEP) * STEP;
    const size = Math.round(Math.abs(shift));
    const behind = shiftedTemperature(colour, shift > 0 ? -size : size);
    const gel =
      behind === undefined
        ? ""
        : `; or put a ${shift > 0 ? "cool" : "warm"} gel of ${fixed(size, 0)} mired on ${name}, which makes it ${sayKelvin(Math.round(behind / 10) * 10)}`;
    return [
      {
        severity: said ? "note" : "check",
        message: `${name} is ${sayKelvin(colour)} and the white balance ${sayKelvin(camera.balance)}${said ? "" : ", which is assumed"}: the face comes out ${fixed(size, 0)} mired ${shift > 0 ? "warm" : "cool"}.`,
        remedy: `Set the white balance to ${sayKelvin(set)}, where ${fixed(Math.abs(miredShift(set, colour)), 0)} mired are left${gel}.`,
        about: name,
      },
    ];
  },
};
