import type { ResultType } from "../../model/values.js";
import { flashRequiredExposure } from "../../physics/exposure.js";
import { illuminanceAtExposureValue } from "../../physics/exposure-value.js";
import { ev100Of, fNumberOf, type Reading } from "../light/reading.js";
import type { Plan } from "../plan.js";
import { type Found, valueOr } from "./found.js";

/**
 * A value as a reading: a reading itself, or an f-number, an exposure or an exposure value of a flat receptor. Null
 * for anything else, and where the camera does not say what it takes.
 */
export function asReading({ scene }: Plan, found: Found): Reading | null {
  if (found.reading !== null || found.value === null) return found.reading;
  const { flat } = scene.meter;
  const { iso, shutter } = scene.camera ?? { iso: null, shutter: null };
  const exposure = ((): number | null => {
    switch (found.type) {
      case "f-number":
        return iso === null ? null : flashRequiredExposure(found.value, iso, flat);
      case "exposure":
        return found.value;
      case "ev": {
        const lux = illuminanceAtExposureValue(found.value, flat);
        return lux === undefined || shutter === null ? null : lux * shutter;
      }
      default:
        return null;
    }
  })();
  return exposure === null || !(exposure > 0) ? null : { exposure, error: 0, constant: flat, shares: [] };
}

/** A reading as a value of another type that says how much light there is: f-number, exposure, exposure value. */
export function readingAs({ scene }: Plan, found: Found, type: ResultType): Found {
  const { reading } = found;
  if (found.type !== "reading" || reading === null) return found;
  const { exposure, constant } = reading;
  const reason = found.reason ?? "the camera does not say enough";
  const { error } = found;
  switch (type) {
    case "f-number":
      return { ...valueOr(type, fNumberOf(scene, exposure, constant), reason), error };
    case "exposure":
      return { ...valueOr(type, exposure > 0 ? exposure : null, reason), error };
    case "ev":
      return {
        ...valueOr(
          type,
          ev100Of(scene, exposure, constant),
          exposure > 0 ? "the shutter time is not known" : reason,
        ),
        error,
      };
    default:
      return found;
  }
}
