import type { Vec3 } from "../core/vector.js";
import type { Sink } from "../diagnostics/diagnostic.js";
import type { Recipe } from "../model/types.js";
import { calm } from "./calm.js";
import { finishCamera } from "./camera.js";
import { keyOf, sayChosenKey } from "./key.js";
import { finishLamp } from "./lamp/build.js";
import { standBodies } from "./lamp/stand-bodies.js";
import { throughCloth } from "./lit/cloth.js";
import { intoSurface } from "./lit/into-surface.js";
import { lightPlace } from "./lit/seen.js";
import { lyingOn } from "./lying-on.js";
import { meterOf } from "./meter.js";
import { pointStation } from "./named-point.js";
import { registerOwners } from "./owners.js";
import { mark } from "./points.js";
import { buildRoom, measureRoom } from "./room.js";
import { ensure, find, nowhere, type Site } from "./site.js";
import { subjectStations } from "./subject-stations.js";
import type {
  Body,
  Scene,
  SceneCamera,
  ScenePolygon,
  SceneRoom,
  SceneSubject,
  Source,
  Station,
} from "./types.js";
import { type WallPlaces, wallPlaces, wallPolygons, wallStations, wallWords } from "./wall-places.js";

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
  if (room !== null) roomPlaces(site, room);
  const polygons: ScenePolygon[] = [];
  const parts = registerOwners(site, () => {
    if (recipe.room !== null && room !== null) buildRoom(site, recipe.room, room, polygons);
  });
  const view = (): SceneCamera | null => {
    const owner = site.owners.get("camera");
    if (recipe.camera === null || owner === undefined) return null;
    ensure(site, owner);
    return parts.lens === null ? null : finishCamera(site, recipe.camera, parts.lens);
  };
  // Finished before its turn only where something is aimed at what it sees.
  let seen: SceneCamera | null = null;
  const early = (): SceneCamera | null => {
    seen ??= view();
    return seen;
  };
  if (room !== null) registerWalls(site, polygons, early);
  for (const owner of parts.all) ensure(site, owner);

  const meter = meterOf(site);
  const surfaces = [...polygons, ...parts.pieces.flatMap((piece) => piece.polygons)];
  const sources = parts.lamps.flatMap((lamp): readonly Source[] => {
    const head = finishLamp(site, lamp, meter.flat);
    return throughCloth(site, lamp.light, intoSurface(site, lamp.light, head, surfaces), surfaces);
  });
  const camera = early();
  const bodies: Body[] = [];
  const subjects: SceneSubject[] = [];
  for (const built of parts.subjects) {
    subjects.push(built.subject);
    bodies.push(...built.bodies);
  }
  const key = keyOf(sources, subjects[0]);
  if (key !== null) sayChosenKey(site, sources, key);
  placeSeenLights(site, sources);
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
    before: undefined,
  });
  for (const piece of parts.pieces) {
    polygons.push(...piece.polygons);
    bodies.push(...piece.bodies);
    stations.push(...piece.stations);
  }
  stations.push(...wallStations(polygons, (word) => placesOfWall(site, word)));
  for (const { point, name, subject } of parts.points) {
    const station = pointStation(site, point, name, subject);
    if (station !== null) stations.push(station);
  }
  for (const source of sources) bodies.push(...standBodies(source, room));
  return {
    room,
    polygons,
    bodies,
    subjects,
    sources,
    stations: layDown(stations, polygons),
    camera,
    meter,
    key,
    landmarks: site.landmarks,
    assumed: site.assumed,
  };
}

/** The walls as places: settled when first asked for, since they lie where the lens sees them. */
function registerWalls(
  site: Site,
  polygons: readonly ScenePolygon[],
  camera: () => SceneCamera | null,
): void {
  for (const word of wallWords.keys()) {
    const build = (): void => {
      const places = wallPlaces(wallPolygons(polygons, word), camera());
      if (places === null) return;
      site.landmarks.set(word, { at: places.middle, ahead: null });
      site.landmarks.set(`${word}.left`, { at: places.left, ahead: null });
      site.landmarks.set(`${word}.right`, { at: places.right, ahead: null });
    };
    site.owners.set(word, { name: word, place: nowhere, state: "waiting", build });
  }
}

/** The places of a wall; null, with a finding, where it has none. */
function placesOfWall(site: Site, word: string): WallPlaces | null {
  const [left, middle, right] = [`${word}.left`, word, `${word}.right`].map((name) => find(site, name));
  return left && middle && right ? { left: left.at, middle: middle.at, right: right.at } : null;
}

/** Stations on top of the sheets that lie where they are. */
function layDown(stations: readonly Station[], polygons: readonly ScenePolygon[]): readonly Station[] {
  const lying: Station[] = [];
  for (const station of stations) lying.push({ ...station, at: lyingOn(polygons, station.at) });
  return lying;
}

/** The middles of the room's own surfaces, for heads that shine into them. */
function roomPlaces(site: Site, { left, right, front, back, height }: SceneRoom): void {
  const x = (left + right) / 2;
  const y = (front + back) / 2;
  const put = (name: string, at: Vec3): void => {
    site.landmarks.set(name, { at, ahead: null });
  };
  put("ceiling", [0, 0, height]);
  put("wall left", [left, y, height / 2]);
  put("wall right", [right, y, height / 2]);
  put("wall back", [x, back, height / 2]);
  put("wall front", [x, front, height / 2]);
}

/** Lights are named as places where they are seen: a cloth or a lit patch in place of the head. */
function placeSeenLights(site: Site, sources: readonly Source[]): void {
  const keyed = site.owners.get("key");
  for (const source of sources) {
    if (source.spillOf !== undefined || (source.patch === undefined && source.cloth === undefined)) continue;
    const landmark = { at: lightPlace(source), ahead: null };
    site.landmarks.set(source.name, landmark);
    if (source.role === "key" && keyed === site.owners.get(source.name)) site.landmarks.set("key", landmark);
  }
}
