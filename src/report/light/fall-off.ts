import type { Vec3 } from "../../core/vector.js";
import { stopsBetween } from "../../physics/stops.js";
import { discTowards } from "../../scene/held-meter.js";
import { lampName, lightPlace } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import { directionTo } from "../geometry/directions.js";
import type { Lit } from "../plan.js";
import { errorOf, type Reading, stopsOver, sumOf } from "./reading.js";

/**
 * Stops by which `to` gets less than `from` from one light alone, straight and bounced, by flat receptors that look at
 * its centre, to that of its lit patch where it shines into a surface; and how far that may be off. Independent of its power. Null where one of the points gets nothing from it.
 */
export function fallOff(
  lit: Lit,
  source: Source,
  from: Vec3,
  to: Vec3,
): { stops: number | null; error: number } {
  const a = perEnergy(lit, source, from);
  const b = perEnergy(lit, source, to);
  return { stops: stopsOver(a, b), error: errorOf(a) + errorOf(b) };
}

/** Stops by which `to` gets less than `from` by direct light alone, as if nothing stood in its way: how a light falls off by its size and place. */
export function fallOffInTheOpen(source: Source, from: Vec3, to: Vec3): number | null {
  const [a, b] = [from, to].map((at) => {
    const facing = directionTo(at, source.centre);
    return facing === null ? 0 : directPerLumenSecond(source, at, facing, "disc");
  });
  return stopsBetween(a as number, b as number) ?? null;
}

/** What a light gives a point per lumen-second of its source. */
function perEnergy({ scene, light }: Lit, source: Source, at: Vec3): Reading {
  const meter = discTowards(scene.stations, at, lightPlace(source));
  const parts = scene.sources.flatMap((part) =>
    meter === null || lampName(part) !== source.name
      ? []
      : [{ share: part.fullEnergy / source.fullEnergy, ...light.reach(part, meter) }],
  );
  return {
    exposure: sumOf(parts.map((part) => part.share * (part.direct + part.bounced))),
    error: sumOf(parts.map((part) => part.share * part.error)),
    constant: 1,
    shares: [],
  };
}
