import type { Meter } from "../../transport/meter.js";
import type { Plan } from "../plan.js";
import { ownerOf } from "../say/surfaces.js";
import { blackBoard, withReflectance } from "./surfaces.js";

/** Surfaces covered with black, and the plan with them so. */
export interface Blackened {
  readonly owners: readonly string[];
  readonly plan: Plan;
}

/** What is the light itself: surfaces that lamps which are on shine into, and cloths that they shine through. */
export function litOwners({ scene }: Plan): readonly string[] {
  return scene.sources.flatMap(({ energy, patch, cloth }) =>
    energy > 0 ? [patch?.surface, cloth?.scrim].filter((owner) => owner !== undefined) : [],
  );
}

/** Most surfaces that are covered. */
const MOST = 3;

/**
 * Covers with black the surfaces that do most for a meter, one after the other, until enough is done or three are
 * covered, but none that is itself the light. Null where nothing can be covered.
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
  const spared = [spare, ...litOwners(plan)];
  const owners: string[] = [];
  let changed: Plan | null = null;
  for (const { surface } of light.contributors(lights, meter)) {
    if (owners.length === MOST || (changed !== null && enough(changed))) break;
    const own = scene.polygons.filter((polygon) => ownerOf(polygon.name) === surface);
    if (spared.includes(surface) || !own.some((polygon) => polygon.frontReflectance > blackBoard)) continue;
    owners.push(surface);
    changed = withReflectance(plan, ({ name }) => owners.includes(ownerOf(name)), blackBoard);
  }
  return changed === null ? null : { owners, plan: changed };
}
