import { add, dot, length, scale, subtract } from "../../math/vector.js";
import { lampName } from "../../scene/lit/seen.js";
import type { Scene, Source, Station } from "../../scene/types.js";
import { type Meter, meterKey } from "../../transport/meter.js";
import { sameSet } from "../../transport/same-set.js";
import type { SceneLight } from "../../transport/scene-light.js";
import type { Plan } from "../plan.js";

/** A meter that has turned by less than this still gets the same bounced light; the cosine of 15 deg. */
const TURNED = 0.966;

/** A meter nearer than this (m) to another that looks the same way gets the same bounced light. */
const NEAR = 0.06;

/** How far (m) a meter is held out of a surface that may have moved away under it. */
const OUT = 0.04;

/** Meters for which bounced light was asked before, shared by plans that are all near one. */
export type HeldMeters = Meter[];

/**
 * A plan in which something is off by a little: direct light is worked out anew, bounced light is that of lamps and
 * meters where they were. By some centimetres that moves what comes off walls far less than what comes straight.
 *
 * @param moved - The plan with one thing off; its lamps and stations in the same order.
 * @param held - Added to: a meter that is close to one of these gets its bounced light.
 */
export function nearPlan(plan: Plan, moved: Plan, held: HeldMeters = []): Plan {
  const { light, scene } = plan;
  const before = new Map<string, Source>();
  for (const source of scene.sources) before.set(nameOf(source), source);
  const known = new Set(scene.stations.map(meterKey));
  const stationBefore = stationsBefore(scene, moved.scene);
  const heldBefore = (meter: Meter): Meter => {
    if (known.has(meterKey(meter))) return meter;
    const station = stationBefore.get(meterKey(meter));
    if (station !== undefined && dot(station.facing, meter.facing) > TURNED) return station;
    const key = meterKey(meter);
    const close = held.find((row) => meterKey(row) === key) ?? held.find((row) => isClose(row, meter));
    if (close !== undefined) return close;
    const inPlace = sameSet(scene, moved.scene);
    const own = inPlace ? meter : { ...meter, at: add(meter.at, scale(meter.facing, OUT)) };
    held.push(own);
    return own;
  };
  const near: SceneLight = {
    ...light,
    reach: (source, meter) => near.glance(source, meter),
    glance: (source, meter) => {
      const here = before.get(nameOf(source)) ?? source;
      const { bounced, error } = light.reach(here, heldBefore(meter), "short");
      return { direct: moved.light.direct(source, meter), bounced, error };
    },
    direct: moved.light.direct,
    fork: () => near,
    withStands: () => near,
  };
  return { ...moved, light: near };
}

/** A plan whose hard places are worked on no longer than others: where only how far it is from another one counts. */
export function shortPlan(plan: Plan): Plan {
  return { ...plan, light: inShort(plan.light) };
}

const inShort = (light: SceneLight): SceneLight => ({
  ...light,
  reach: (source, meter) => light.reach(source, meter, "short"),
  fork: () => inShort(light.fork()),
  withStands: (scene) => inShort(light.withStands(scene)),
});

/** The stations of a scene by the keys that they have in the moved one. */
function stationsBefore(scene: Scene, moved: Scene): ReadonlyMap<string, Station | undefined> {
  const before = new Map<string, Station | undefined>();
  for (let i = 0; i < moved.stations.length; i++)
    before.set(meterKey(moved.stations[i] as Station), scene.stations[i]);
  return before;
}

const isClose = (a: Meter, b: Meter): boolean =>
  a.receptor === b.receptor && length(subtract(a.at, b.at)) < NEAR && dot(a.facing, b.facing) > TURNED;

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
    reach: (source, meter) => tinted.glance(source, meter),
    glance: (source, meter) => {
      const { direct, bounced, error } = light.reach(source, meter, "short");
      return { direct, bounced: Math.max(0, bounced + by * light.slope(source, meter, owners)), error };
    },
    fork: () => tinted,
    withStands: () => tinted,
  };
  return { ...plan, light: tinted };
}
