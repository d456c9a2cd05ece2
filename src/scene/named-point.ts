import type { Vec3 } from "../core/vector.js";
import type { PointModel } from "../model/types.js";
import { blockDirection, blockPoint } from "./points.js";
import { find, type Site } from "./site.js";
import type { Landmark, Station } from "./types.js";

/**
 * Puts a named point into the scene. `at` says where it is; else it is built from `up` above the floor and steps from
 * its subject's place (`owner`), or from the mark where it belongs to none.
 */
export function placePoint(
  site: Site,
  point: PointModel,
  names: readonly string[],
  owner: string | null,
): void {
  const landmark = landmarkOf(site, point, owner);
  for (const name of names) site.landmarks.set(name, landmark);
}

function landmarkOf(site: Site, point: PointModel, owner: string | null): Landmark {
  const base = owner === null ? null : find(site, owner);
  const start: Vec3 = base?.at ?? [0, 0, 0];
  const way: Vec3 = base?.ahead ?? [0, -1, 0];
  if (point.at !== undefined) {
    const resolved = blockPoint(site, point.origins, "at", point.at);
    return { at: resolved?.at ?? start, ahead: base?.ahead ?? resolved?.ahead ?? null };
  }
  const on = point.ahead?.value ?? 0;
  const side = (point.right?.value ?? 0) - (point.left?.value ?? 0);
  const up = point.up?.value ?? 0;
  return {
    at: [start[0] + side + on * way[0], start[1] + on * way[1], start[2] + up],
    ahead: base?.ahead ?? null,
  };
}

/** The station of a named point that says where its meter looks; null for one that does not. */
export function pointStation(
  site: Site,
  point: PointModel,
  name: string,
  subject: string | null,
): Station | null {
  const place = site.landmarks.get(name);
  if (point.faces === undefined || place === undefined) return null;
  const facing = blockDirection(site, point.origins, "faces", name, point.faces, place.at, false);
  if (facing === null) return null;
  return {
    name,
    subject,
    at: place.at,
    facing,
    receptor: "disc",
    looks: point.faces.kind === "point" ? `towards ${point.faces.written}` : `along ${point.faces.written}`,
    natural: true,
    before: undefined,
  };
}
