import type { Vec3 } from "../../core/vector.js";
import { stopsBetween } from "../../physics/stops.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import { directionTo } from "../geometry/directions.js";
import type { Lit } from "../plan.js";
import { sumOf } from "./reading.js";

/**
 * Stops by which `to` gets less than `from` from one light alone, straight and bounced, by flat receptors that look at
 * its centre. Independent of its power. Null where one of the points gets nothing from it.
 */
export function fallOff(lit: Lit, source: Source, from: Vec3, to: Vec3): number | null {
  const a = perEnergy(lit, source, from);
  const b = perEnergy(lit, source, to);
  return stopsBetween(a, b) ?? null;
}

/** The same by direct light alone, as if nothing stood in its way: how a light falls off by its size and place. */
export function fallOffInTheOpen(source: Source, from: Vec3, to: Vec3): number | null {
  const [a, b] = [from, to].map((at) => {
    const facing = directionTo(at, source.centre);
    return facing === null ? 0 : directPerLumenSecond(source, at, facing, "disc");
  });
  return stopsBetween(a as number, b as number) ?? null;
}

/** What a light gives a point per lumen-second of the head. */
function perEnergy({ scene, light }: Lit, source: Source, at: Vec3): number {
  const facing = directionTo(at, source.centre);
  if (facing === null) return 0;
  const parts = scene.sources.filter((part) => lampName(part) === source.name);
  return sumOf(
    parts.map((part) => {
      const { direct, bounced } = light.reach(part, { at, facing, receptor: "disc" });
      return (part.fullEnergy / source.fullEnergy) * (direct + bounced);
    }),
  );
}
