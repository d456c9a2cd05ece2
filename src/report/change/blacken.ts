import type { Meter } from "../../transport/meter.js";
import type { Plan } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import { blackBoard, withReflectance } from "./surfaces.js";

/** Surfaces covered with black, and the plan with them so. */
export interface Blackened {
  readonly owners: readonly string[];
  readonly plan: Plan;
}

/** Most surfaces that are covered. */
const MOST = 3;

/**
 * Covers with black the surfaces that do most for a meter, one after the other, until enough is done or three are
 * covered. Null where nothing can be covered.
 *
 * @param spare - A surface that stays as it is.
 */
export function blackenUntil(
  plan: Plan,
  meter: Meter,
  spare: string | null,
  enough: (changed: Plan) => boolean,
): Blackened | null {
  const { scene, light } = plan;
  const lights = scene.sources.map((source) => ({ source, energy: source.energy }));
  const owners: string[] = [];
  let changed: Plan | null = null;
  for (const { surface } of light.contributors(lights, meter)) {
    if (owners.length === MOST || (changed !== null && enough(changed))) break;
    const own = scene.polygons.filter((polygon) => ownerOf(polygon.name) === surface);
    if (surface === spare || !own.some((polygon) => polygon.frontReflectance > blackBoard)) continue;
    owners.push(surface);
    changed = withReflectance(plan, ({ name }) => owners.includes(ownerOf(name)), blackBoard);
  }
  return changed === null ? null : { owners, plan: changed };
}
