import type { Scene, Station } from "../../scene/types.js";
import type { ShadedSource } from "../hiding/shaded.js";
import { type Eye, type EyePaths, eyeOf, eyePaths } from "./eye-paths.js";
import { type Fineness, fineness } from "./fineness.js";
import { type Lamp, lampOf } from "./lamp.js";
import { type Landings, landingsOf } from "./landings.js";
import { type Surfaces, surfacesOf } from "./surfaces.js";
import type { Quality } from "./types.js";
import { type World, worldOf } from "./world.js";

/**
 * Everything about bounced light that depends on set, figure, reflectances and stations, and on no light: paths from
 * the stations. They are followed when first asked for, and kept.
 */
export interface KeptSet {
  readonly fineness: Fineness;
  readonly stations: readonly Station[];
  readonly world: World;
  readonly surfaces: Surfaces;
  /** Index into the owners of surfaces that count as black; -1 for none. */
  readonly black: number;
  /** A station made ready. */
  readonly eye: (station: number) => Eye;
  /** The paths of a station, set by set. */
  readonly paths: (station: number, set: number) => EyePaths;
  readonly lamp: (source: ShadedSource) => Lamp;
  /** Where a lamp's light first falls, set by set. */
  readonly landings: (lamp: Lamp, set: number) => Landings;
}

/** Makes a scene's surfaces and stations ready, once for all lights. */
export function keepSet(scene: Scene, quality: Quality = "usual"): KeptSet {
  return keepSetAt(scene, fineness[quality]);
}

/** The same with the fineness given. */
export function keepSetAt(scene: Scene, rule: Fineness): KeptSet {
  const world = worldOf(scene);
  const surfaces = surfacesOf(scene, world);
  return keptFor(
    { fineness: rule, world, surfaces, black: -1, ...lampsOf(world, surfaces, rule) },
    scene.stations,
  );
}

/** The same set for other stations. */
export function keptAt(kept: KeptSet, stations: readonly Station[]): KeptSet {
  return keptFor(kept, stations);
}

/** A kept set as it would be if all that one owner has were black. */
export function blackened(kept: KeptSet, owner: string): KeptSet {
  return { ...kept, black: kept.surfaces.owners.indexOf(owner) };
}

/** What does not depend on the stations. */
type Common = Omit<KeptSet, "stations" | "eye" | "paths">;

function keptFor(common: Common, stations: readonly Station[]): KeptSet {
  const { world, surfaces, fineness: rule } = common;
  const eyes: (Eye | undefined)[] = [];
  const followed: EyePaths[][] = stations.map(() => []);
  const eye = (station: number): Eye => {
    const known = eyes[station] ?? eyeOf(world, stations[station] as Station);
    eyes[station] = known;
    return known;
  };
  return {
    ...common,
    stations,
    eye,
    paths: (station, set) => {
      const known = followed[station]?.[set];
      if (known !== undefined) return known;
      const fresh = eyePaths(world, surfaces, eye(station), set, rule.paths);
      (followed[station] as EyePaths[])[set] = fresh;
      return fresh;
    },
  };
}

function lampsOf(world: World, surfaces: Surfaces, rule: Fineness): Pick<KeptSet, "lamp" | "landings"> {
  const lamps = new WeakMap<ShadedSource, Lamp>();
  const landed = new WeakMap<Lamp, Landings[]>();
  return {
    lamp: (source) => {
      const known = lamps.get(source) ?? lampOf(world, source);
      lamps.set(source, known);
      return known;
    },
    landings: (lamp, set) => {
      const all = landed.get(lamp) ?? [];
      landed.set(lamp, all);
      const known = all[set] ?? landingsOf(world, surfaces, lamp, set, rule.paths);
      all[set] = known;
      return known;
    },
  };
}
