import { balanceWords, tintWords } from "../colour/advice.js";
import { faceBalance } from "../colour/balance.js";
import { sayKelvin } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";

/** The face comes out with a tint at the camera's white balance. */
export const whiteBalanceOff: Rule = {
  code: "white-balance-off",
  thresholds: ["off_balance"],
  safety: false,
  page: {
    when: "All light on the first face together differs from the camera's white balance by more than `off_balance` (30 mired); where `pass_for` names sunlight, from what that sun and its sky come out as at daylight balance. A check where the recipe sets no `balance`, so that 5600 K is assumed; a note where it sets one, since the tint may be meant.",
    means: "The whole picture comes out orange or blue, or without the warmth that was wished for.",
    todo: "Set the white balance to the light on the face, or gel the lights; a tint that is meant is said by `balance`.",
    source:
      "Mired as the reciprocal of colour temperature: CIE; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const { camera } = plan.scene;
    const key = keyLight(plan);
    const face = faceBalance(plan);
    if (key === null || camera === null || face === null) return [];
    if (Math.abs(face.now - face.wanted) <= threshold(plan.recipe, "off_balance") + 1e-9) return [];
    const { name, colour } = key.source;
    const one = face.face === colour;
    const said = plan.recipe.camera?.balance !== undefined;
    const wish = face.wished
      ? `, where the sun that is wished for and its sky come out ${tintWords(face.wanted)}`
      : "";
    return [
      {
        severity: said ? "note" : "check",
        message: `${one ? name : "The light on the face"} is ${sayKelvin(face.face)} and the white balance ${sayKelvin(camera.balance)}${said ? "" : ", which is assumed"}: the face comes out ${tintWords(face.now)}${wish}.`,
        remedy: `${balanceWords(face, one ? name : "every light")}.`,
        about: name,
      },
    ];
  },
};
