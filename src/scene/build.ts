import type { Sink } from "../diagnostics/diagnostic.js";
import type { Recipe } from "../model/types.js";
import { calm } from "./calm.js";
import { finishCamera } from "./camera.js";
import { keyOf } from "./key.js";
import { finishLamp } from "./lamp/build.js";
import { meterOf } from "./meter.js";
import { pointStation } from "./named-point.js";
import { registerOwners } from "./owners.js";
import { mark } from "./points.js";
import { buildRoom, measureRoom } from "./room.js";
import { ensure, nowhere, type Site } from "./site.js";
import { subjectStations } from "./subject-stations.js";
import type { Body, Scene, ScenePolygon, SceneSubject, Source, Station } from "./types.js";

/**
 * Turns a checked recipe into metres: one frame, polygons, bodies, sources and stations in a fixed order. What cannot
 * be built is reported and left out, or put where its default says. Places may be named before what they belong to is
 * written; a ring of places is reported.
 *
 * @param recipe - A checked recipe; names that have no place are reported, not thrown.
 * @param sink - Where findings go; empty places for models made by code.
 * @returns The scene in metres, radians and lumen-seconds.
 */
export function buildScene(recipe: Recipe, sink: Sink): Scene {
  const site: Site = {
    recipe,
    sink: calm(sink),
    landmarks: new Map([
      ["mark", mark],
      ["floor", mark],
    ]),
    owners: new Map(),
    assumed: [],
    place: nowhere,
  };
  const room = measureRoom(site);
  if (room !== null) site.landmarks.set("ceiling", { at: [0, 0, room.height], ahead: null });
  const polygons: ScenePolygon[] = [];
  const parts = registerOwners(site, () => {
    if (recipe.room !== null && room !== null) buildRoom(site, recipe.room, room, polygons);
  });
  for (const owner of parts.all) ensure(site, owner);

  const meter = meterOf(site);
  const sources = parts.lamps.map((lamp): Source => finishLamp(site, lamp, meter.flat));
  const camera =
    recipe.camera === null || parts.lens === null ? null : finishCamera(site, recipe.camera, parts.lens);
  const bodies: Body[] = [];
  const subjects: SceneSubject[] = [];
  for (const built of parts.subjects) {
    subjects.push(built.subject);
    bodies.push(...built.bodies);
  }
  const key = keyOf(sources, subjects[0]);
  const stations: Station[] = [];
  const looks = { key: key === null ? null : (sources[key] ?? null), camera: camera?.at ?? null };
  for (const owner of parts.subjects) subjectStations(stations, owner, site.landmarks, looks);
  stations.push({
    name: "floor",
    subject: null,
    at: mark.at,
    facing: [0, 0, 1],
    receptor: "disc",
    looks: "along its surface",
    natural: true,
  });
  for (const piece of parts.pieces) {
    polygons.push(...piece.polygons);
    bodies.push(...piece.bodies);
    stations.push(...piece.stations);
  }
  for (const { point, name, subject } of parts.points) {
    const station = pointStation(site, point, name, subject);
    if (station !== null) stations.push(station);
  }
  return {
    room,
    polygons,
    bodies,
    subjects,
    sources,
    stations,
    camera,
    meter,
    key,
    landmarks: site.landmarks,
    assumed: site.assumed,
  };
}
