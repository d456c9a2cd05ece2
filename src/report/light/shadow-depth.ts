import type { Scene, Station } from "../../scene/types.js";
import { directPerLumenSecond } from "../../transport/direct.js";
import type { Meter } from "../../transport/meter.js";
import { type Lit, lightsOf } from "../plan.js";
import { readingAt } from "./reading.js";

/** The share of a light that must reach a place straight for its shadow there to be its own. */
const CLEAR = 0.9;

/** The share of a light's straight light that reaches a meter past what stands in the way; null where it gives none. */
export function shareReaching({ scene, light }: Lit, name: string, meter: Meter): number | null {
  const source = lightsOf(scene).find((row) => row.name === name);
  if (source === undefined) return null;
  const open = directPerLumenSecond(source, meter.at, meter.facing, meter.receptor);
  return open > 0 ? light.direct(source, meter) / open : null;
}

/**
 * Depth in stops of the shadow that something small throws at a meter under one of several lights: all light there
 * against all but what comes straight from that light. Null where the light gives the place nothing straight;
 * infinite where nothing else does.
 */
export function shadowDepthAt(lit: Lit, name: string, meter: Meter): number | null {
  const { exposure, shares } = readingAt(lit, meter);
  const own = shares.find((share) => share.name === name)?.direct ?? 0;
  if (!(own > 0)) return null;
  // What is left of a sum after its greatest part is added up anew, so that nothing is left where there is nothing.
  const rest = shares.reduce(
    (sum, share) => sum + share.bounced + (share.name === name ? 0 : share.direct),
    0,
  );
  return rest > 0 ? Math.log2(exposure / rest) : Number.POSITIVE_INFINITY;
}

/** The places on which shadows are looked at: the set and the floor. */
function setStations(scene: Scene): readonly Station[] {
  return scene.stations.filter((row) => row.natural && row.subject === null);
}

/** The depth of a light's shadow on the set, and where. */
export interface SetShadow {
  readonly station: Station;
  readonly stops: number;
}

/**
 * The depth of a light's shadow on the set: at the place of set or floor that gets most straight from it, nearly
 * unhidden. Null where it reaches none.
 */
export function setShadow(lit: Lit, name: string): SetShadow | null {
  let best: SetShadow | null = null;
  let most = 0;
  for (const station of setStations(lit.scene)) {
    if ((shareReaching(lit, name, station) ?? 0) < CLEAR) continue;
    const own = readingAt(lit, station, [name]).shares[0]?.direct ?? 0;
    const stops = own > most ? shadowDepthAt(lit, name, station) : null;
    if (stops === null) continue;
    most = own;
    best = { station, stops };
  }
  return best;
}
