import { once } from "../../core/once.js";
import type { Scene } from "../../scene/types.js";
import type { ShadedSource } from "../hiding/shaded.js";
import type { Meter } from "../meter.js";
import { type Corners, type Eye, type EyePaths, emptyCorners, eyeOf, eyePaths } from "./eye-paths.js";
import { type Fineness, fineness } from "./fineness.js";
import { type Lamp, lampOf } from "./lamp.js";
import { type Landings, landingsOf } from "./landings.js";
import { type Surfaces, surfacesOf } from "./surfaces.js";
import type { Quality } from "./types.js";
import { type World, worldOf } from "./world.js";

/** What depends on set, figure and reflectances alone, and where the light of lamps first falls in it. */
export interface KeptSet {
  readonly fineness: Fineness;
  readonly world: World;
  readonly surfaces: Surfaces;
  readonly corners: Corners;
  readonly lamp: (source: ShadedSource) => Lamp;
  /** Where a lamp's light first falls, set by set. */
  readonly landings: (lamp: Lamp, set: number) => Landings;
}

/** A set as one meter looks at it: paths from the meter, which know no light, followed when first asked for, and kept. */
export interface KeptView extends KeptSet {
  /** Index into the owners of surfaces that count as black; -1 for none. */
  readonly black: number;
  /** The meter made ready. */
  readonly eye: () => Eye;
  /** The paths of the meter, set by set; far ones of a hard place are followed anew each time. */
  readonly paths: (set: number) => EyePaths;
}

/** Makes a scene's surfaces ready, once for all lights and meters. */
export function keepSet(scene: Scene, quality: Quality = "usual"): KeptSet {
  const world = worldOf(scene);
  const surfaces = surfacesOf(scene, world);
  const rule = fineness[quality];
  return setOf(world, surfaces, rule);
}

/** The same set, looked at less finely: what is made ready for the set serves both. */
export function glancedSet(kept: KeptSet): KeptSet {
  const { world, surfaces } = kept;
  return setOf(world, surfaces, fineness.glance);
}

/** A kept set as a meter looks at it. */
export function keptAt(kept: KeptSet, meter: Meter): KeptView {
  const { world, surfaces, corners, fineness: rule } = kept;
  const followed: EyePaths[] = [];
  const eye = once(() => eyeOf(world, meter));
  let held = 0;
  const paths = (set: number): EyePaths => {
    const known = followed[set];
    if (known !== undefined) return known;
    const made = eyePaths(world, surfaces, eye(), set, rule.paths, corners);
    if (held > rule.mostCorners) return made;
    held += made.side.length;
    followed[set] = made;
    return made;
  };
  return viewOf(kept, -1, eye, paths);
}

const viewOf = (
  { fineness: rule, world, surfaces, corners, lamp, landings }: KeptSet,
  black: number,
  eye: KeptView["eye"],
  paths: KeptView["paths"],
): KeptView => ({ fineness: rule, world, surfaces, corners, lamp, landings, black, eye, paths });

/** The same as it would be if all that one owner has were black. */
export function blackened(kept: KeptView, owner: string): KeptView {
  return viewOf(kept, kept.surfaces.owners.indexOf(owner), kept.eye, kept.paths);
}

function setOf(world: World, surfaces: Surfaces, rule: Fineness): KeptSet {
  const lamps = new WeakMap<ShadedSource, Lamp>();
  const landed = new WeakMap<Lamp, Landings[]>();
  return {
    fineness: rule,
    world,
    surfaces,
    corners: emptyCorners(4 * rule.paths),
    lamp: (source) => {
      const known = lamps.get(source) ?? lampOf(world, source);
      lamps.set(source, known);
      return known;
    },
    landings: (lamp, set) => {
      const all = landed.get(lamp) ?? [];
      landed.set(lamp, all);
      const known = all[set] ?? landingsOf(world, surfaces, lamp, set, rule.paths);
      if (set * rule.paths <= rule.mostCorners) all[set] = known;
      return known;
    },
  };
}
