import { dot } from "../../math/vector.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Source } from "../../scene/types.js";
import { type Meter, meterKey } from "../../transport/meter.js";
import type { SceneLight } from "../../transport/scene-light.js";
import type { Plan } from "../plan.js";

/** A meter that has turned by less than this still gets the same bounced light; the cosine of 15 deg. */
const TURNED = 0.966;

/**
 * A plan in which a lamp is off by a little: direct light is worked out anew, bounced light is that of the lamp where it
 * stood. By some centimetres a lamp moves what comes off walls far less than what comes straight from it.
 *
 * @param moved - The plan with the lamp off; its lamps in the same order.
 */
export function nearPlan(plan: Plan, moved: Plan): Plan {
  const { light, scene } = plan;
  const before = new Map<string, Source>();
  for (const source of scene.sources) before.set(nameOf(source), source);
  const known = new Set(scene.stations.map(meterKey));
  const stationBefore = new Map(
    moved.scene.stations.map((station, i) => [meterKey(station), scene.stations[i]] as const),
  );
  const heldBefore = (meter: Meter): Meter => {
    if (known.has(meterKey(meter))) return meter;
    const station = stationBefore.get(meterKey(meter));
    return station !== undefined && dot(station.facing, meter.facing) > TURNED ? station : meter;
  };
  const near: SceneLight = {
    ...light,
    reach: (source, meter) => {
      const { bounced, error } = light.reach(before.get(nameOf(source)) ?? source, heldBefore(meter));
      return { direct: moved.light.direct(source, meter), bounced, error };
    },
    direct: moved.light.direct,
    fork: () => near,
    withStands: () => near,
  };
  return { ...moved, light: near };
}

/** Cloth and head of one light are two sources. */
function nameOf(source: Source): string {
  return `${lampName(source)} ${source.spillOf === undefined ? "" : "spill"}`;
}

/**
 * A plan in which some surfaces throw back more or less by a share: bounced light follows to first order.
 *
 * @param by - The change as a part of what they throw back.
 */
export function tintedPlan(plan: Plan, owners: readonly string[], by: number): Plan {
  const { light } = plan;
  const tinted: SceneLight = {
    ...light,
    reach: (source, meter) => {
      const { direct, bounced, error } = light.reach(source, meter);
      return { direct, bounced: Math.max(0, bounced + by * light.slope(source, meter, owners)), error };
    },
    fork: () => tinted,
    withStands: () => tinted,
  };
  return { ...plan, light: tinted };
}
