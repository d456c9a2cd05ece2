import type { LightModel } from "../../model/types.js";
import { assume, type Site } from "../site.js";

/**
 * Whether a head was metered with its grid on: no loss of the grid is said, so the reading holds it. Otherwise the
 * reading is that of the head without the grid.
 */
export function meteredWithGrid(light: LightModel): boolean {
  return (
    light.grid !== undefined &&
    light.grid_loses === undefined &&
    light.output === undefined &&
    light.calibration?.kind === "metered"
  );
}

/** What is lost between the head as defined and the air, in stops: gels, other losses, the grid on its axis. */
export function lossStops(site: Site, light: LightModel): number {
  let stops = light.loses?.value ?? 0;
  for (const gel of light.gel?.items ?? []) stops += gel.loses.value;
  if (light.grid !== undefined) {
    if (light.grid_loses === undefined) {
      const value = meteredWithGrid(light) ? "held in the meter reading" : "0 stop";
      assume(site, `loss of the grid of ${light.name}`, value, true);
    }
    stops += light.grid_loses?.value ?? 0;
  }
  return stops;
}

/** Least mired value a lamp is given; gels that cool a light past it have no colour temperature. */
const leastMired = 20;

/** Colour temperature before the gels, K. */
export function bareColour(light: LightModel): number {
  return light.colour?.value ?? 5600;
}

/** Colour temperature behind the gels, K. */
export function gelledColour(light: LightModel): number {
  const bare = bareColour(light);
  const items = light.gel?.items;
  if (items === undefined) return bare;
  let mired = 1e6 / bare;
  for (const gel of items)
    mired += gel.tint === "warm" ? gel.shift.value : gel.tint === "cool" ? -gel.shift.value : 0;
  return 1e6 / Math.max(leastMired, mired);
}
