import type { Vec3 } from "../../core/vector.js";
import { stopsBetween } from "../../physics/stops.js";
import type { Source } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import { directionTo } from "../geometry/directions.js";

/**
 * Stops by which `to` gets less than `from` from one light, by flat receptors that look at its centre. Independent of
 * its power. Null where one of the points gets nothing from it.
 */
export function fallOff(source: Source, from: Vec3, to: Vec3): number | null {
  const a = perEnergy(source, from);
  const b = perEnergy(source, to);
  return stopsBetween(a, b) ?? null;
}

function perEnergy(source: Source, at: Vec3): number {
  const facing = directionTo(at, source.centre);
  return facing === null ? 0 : directPerLumenSecond(source, at, facing, "disc");
}
