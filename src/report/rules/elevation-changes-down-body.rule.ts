import type { Source } from "../../scene/types.js";
import { elevationOf } from "../geometry/directions.js";
import { sayAngle } from "../say/quantity.js";
import { threshold } from "../settings.js";
import { carriedBack } from "./carry-back.js";
import { keyLight } from "./key-light.js";
import type { Rule } from "./rule.js";
import { sunWish } from "./wishes.js";

/** A near lamp that is to pass for sun stands steeper for the feet than for the face. */
export const elevationChangesDownBody: Rule = {
  code: "elevation-changes-down-body",
  thresholds: ["elevation_spread"],
  safety: false,
  page: {
    when: "`intent` wishes for sunlight, and the elevation of the key at the face and at the feet differs by more than `elevation_spread` (15 deg).",
    means:
      "The real sun stands equally high for every part of a body; shadows of hands and hem give a near lamp away.",
    todo: "Move the lamp back, or crop the picture higher.",
    source: "Geometry; the threshold is common practice, no source.",
  },
  check: (plan) => {
    const key = keyLight(plan);
    if (sunWish(plan.recipe) === null || key === null || key.source.patch !== undefined) return [];
    const { place } = key.subject;
    const most = threshold(plan.recipe, "elevation_spread");
    const spreadOf = ({ centre }: Source): number =>
      Math.abs(elevationOf(place, centre) - elevationOf(key.face, centre));
    const spread = spreadOf(key.source);
    if (spread <= most + 1e-9) return [];
    const feet = elevationOf(place, key.source.centre);
    const back = carriedBack(plan, key, (source) => spreadOf(source) - most);
    const remedy =
      back === null
        ? "Crop the picture higher: room and stand let the lamp no further back."
        : back.enough
          ? `${back.words}: then it is ${sayAngle(elevationOf(key.face, back.there.centre))} for the face and ${sayAngle(elevationOf(place, back.there.centre))} for the feet. Or crop the picture higher.`
          : `Crop the picture higher: ${back.words} face and feet are still ${sayAngle(spreadOf(back.there))} apart.`;
    return [
      {
        severity: "note",
        message: `This sun stands at ${sayAngle(key.elevation)} for the face and ${sayAngle(feet)} for the feet: a near lamp shows.`,
        remedy,
        about: key.source.name,
      },
    ];
  },
};
