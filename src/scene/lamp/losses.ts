import type { LightModel } from "../../model/types.js";
import { assume, type Site } from "../site.js";

/** What is lost between the head as defined and the air, in stops: gels, other losses, the grid on its axis. */
export function lossStops(site: Site, light: LightModel): number {
  let stops = light.loses?.value ?? 0;
  for (const gel of light.gel?.items ?? []) stops += gel.loses.value;
  if (light.grid !== undefined) {
    if (light.grid_loses === undefined) assume(site, `loss of the grid of ${light.name}`, "0 stop", true);
    stops += light.grid_loses?.value ?? 0;
  }
  return stops;
}

/** Least mired value a lamp is given; gels that cool a light past it have no colour temperature. */
const leastMired = 20;

/** Colour temperature behind the gels, K. */
export function gelledColour(light: LightModel): number {
  const bare = light.colour?.value ?? 5600;
  const items = light.gel?.items;
  if (items === undefined) return bare;
  let mired = 1e6 / bare;
  for (const gel of items)
    mired += gel.tint === "warm" ? gel.shift.value : gel.tint === "cool" ? -gel.shift.value : 0;
  return 1e6 / Math.max(leastMired, mired);
}
