import type { Scene, Source } from "../../scene/types.js";
import type { Plan } from "../plan.js";
import { type Shadow, type Stage, shadowsOf, stageOf } from "./shadows-of.js";
import { type Thrower, type Throwers, throwersOf } from "./throwers.js";

/** The shadows of a scene by its lights, each worked out when first asked for, and kept. */
export interface Cast {
  readonly scene: Scene;
  readonly throwers: Throwers;
  /** The shadow of one of its throwers by one light on every surface. */
  readonly shadows: (source: Source, thrower: Thrower) => readonly Shadow[];
}

/** The shadows of a plan's scene: those at hand, if they are its own. */
export function castFor({ scene, cast }: Pick<Plan, "scene" | "cast">): Cast {
  return cast?.scene === scene ? cast : castOf(scene);
}

/** What throws shadows in a scene, and where they fall. */
export function castOf(scene: Scene): Cast {
  const throwers = throwersOf(scene);
  const stages = new Map<Source, Stage>();
  const known = new Map<Source, Map<Thrower, readonly Shadow[]>>();
  const stage = (source: Source): Stage => {
    const own = stages.get(source) ?? stageOf(scene, source, throwers);
    stages.set(source, own);
    return own;
  };
  return {
    scene,
    throwers,
    shadows: (source, thrower) => {
      const own = known.get(source) ?? new Map<Thrower, readonly Shadow[]>();
      known.set(source, own);
      const found = own.get(thrower) ?? shadowsOf(stage(source), thrower);
      own.set(thrower, found);
      return found;
    },
  };
}
