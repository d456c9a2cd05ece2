import { once } from "../core/once.js";
import { emptyVector } from "../physics/light-vector.js";
import { lyingOn } from "../scene/lying-on.js";
import { solidsOf, surfaced } from "../scene/sunk.js";
import type { Scene, Source } from "../scene/types.js";
import { type BlackSet, blackSets, contributors } from "./bounce/contributors.js";
import { isIndoors } from "./bounce/first-hit.js";
import { glancedSet, type KeptSet, type KeptView, keepSet, keptAt } from "./bounce/kept-set.js";
import { type Reach as BouncedReach, bouncedBy, reachOf, slopesOf } from "./bounce/reach.js";
import type { Contributor, Patience, Quality } from "./bounce/types.js";
import { prepareSource } from "./direct.js";
import { occludersOf } from "./hiding/occluder.js";
import { type ShadedSource, shadedReading, shadedSource } from "./hiding/shaded.js";
import { type Meter, meterKey } from "./meter.js";
import { occludersFor } from "./outside.js";
import { sourceKey } from "./source-key.js";

/** What one source gives a meter, in lx s per lm s of the source. */
export interface Reach {
  /** Straight from the source, with what hides part of it. */
  readonly direct: number;
  /** By way of surfaces. */
  readonly bounced: number;
  /** How far `bounced` may be off. */
  readonly error: number;
}

const noReach: Reach = { direct: 0, bounced: 0, error: 0 };

/** A source and the luminous energy it is to give, lm s. */
export interface PoweredSource {
  readonly source: Source;
  readonly energy: number;
}

/**
 * The light of a scene at any meter from any source, per lumen-second of that source. What depends on the set alone is
 * worked out once, what depends on a source's place once for each place; powers and colours cost nothing. Answers do
 * not depend on the order of the questions.
 */
export interface SceneLight {
  /**
   * @param patience - `short` for what is shown nowhere as a reading: a place that few paths light is worked on no
   *   longer than any other.
   */
  readonly reach: (source: Source, meter: Meter, patience?: Patience) => Reach;
  /**
   * The same by fewer paths: `direct` as it is, `bounced` and its stated error at a fraction of the cost. It settles
   * which of many places is worth a reading, and is shown nowhere.
   */
  readonly glance: (source: Source, meter: Meter) => Reach;
  /** The direct part alone, without the work that bounced light takes, lx s per lm s. */
  readonly direct: (source: Source, meter: Meter) => number;
  /**
   * How the bounced part follows the reflectances of some surfaces, to first order: its change in lx s per lm s for
   * each part by which they all change, 0.1 for a tenth more.
   *
   * @param owners - What the surfaces belong to: `floor`, `wall left`, a piece of the set, a person.
   */
  readonly slope: (source: Source, meter: Meter, owners: readonly string[]) => number;
  /**
   * What the surfaces do for a meter under some lights, the greatest first. Worked out when first asked for: some times
   * the cost of a reading.
   */
  readonly contributors: (lights: readonly PoweredSource[], meter: Meter) => readonly Contributor[];
  /**
   * A light of the same set that knows what this one knows. What it works out further, for lamps that move and meters
   * that follow them, is its own and is dropped with it.
   */
  readonly fork: () => SceneLight;
  /**
   * The light of a scene that differs from this one by where its lamps' stands are, and by its lamps: what comes straight
   * is worked out anew past them. What bounces is the kept set's, in which the thin black tubes stay where they were.
   */
  readonly withStands: (moved: Scene) => SceneLight;
}

/** A meter, and the set as it looks at it. */
interface Spot {
  /** True in the inside of a solid, where no light is. */
  readonly shut: boolean;
  readonly kept: KeptView;
  /** The same with one surface black after the other; made when first asked for. */
  blacks: readonly BlackSet[] | null;
  /** The same set looked at less finely; made when first asked for. */
  glanced: KeptView | null;
  readonly meter: Meter;
}

/** What a light has worked out so far. */
interface Known {
  readonly spots: Map<string, Spot>;
  readonly sources: Map<string, ShadedSource>;
  readonly reaches: Map<KeptView, Map<string, BouncedReach>>;
  /** Means of some sets of paths. */
  readonly means: Map<KeptView, Map<string, number>>;
  readonly directs: Map<string, number>;
  readonly slopes: Map<KeptView, Map<string, Float64Array>>;
}

/** What all forks of a light share. */
interface Shared {
  readonly scene: Scene;
  readonly occluders: ReturnType<typeof occludersOf>;
  readonly whole: KeptSet;
  /** Made when first asked for. */
  readonly glanced: () => KeptSet;
}

/** The light of a scene. */
export function sceneLight(scene: Scene, quality: Quality = "usual"): SceneLight {
  const known: Known = {
    spots: new Map(),
    sources: new Map(),
    reaches: new Map(),
    means: new Map(),
    directs: new Map(),
    slopes: new Map(),
  };
  const whole = keepSet(scene, quality);
  const glanced = once(() => glancedSet(whole));
  return lightFrom({ scene, occluders: occludersOf(scene), whole, glanced }, known);
}

function copyOf(known: Known): Known {
  return {
    spots: new Map(known.spots),
    sources: new Map(known.sources),
    reaches: copied(known.reaches),
    means: copied(known.means),
    directs: new Map(known.directs),
    slopes: copied(known.slopes),
  };
}

/** From the least to the greatest, so that the order of the lights changes no bit. */
const sumOf = (parts: number[]): number => parts.sort((a, b) => a - b).reduce((sum, part) => sum + part, 0);

const copied = <K, T>(all: Map<K, Map<string, T>>): Map<K, Map<string, T>> =>
  new Map([...all].map(([key, own]) => [key, new Map(own)]));

function lightFrom(shared: Shared, known: Known): SceneLight {
  const { scene, occluders, whole, glanced } = shared;
  const { spots, sources, reaches, means, directs, slopes } = known;
  const scratch = emptyVector();
  const solids = once(() => solidsOf(scene));

  const spotOf = (held: Meter): Spot => {
    const lying = lyingOn(scene.polygons, held.at);
    const free = surfaced(solids(), lying, held.facing);
    const meter = { ...held, at: free ?? lying };
    const shut = free === null;
    const key = shut ? `${meterKey(meter)} shut` : meterKey(meter);
    const known = spots.get(key);
    if (known !== undefined) return known;
    const spot: Spot = { shut, kept: keptAt(whole, meter), blacks: null, glanced: null, meter };
    spots.set(key, spot);
    return spot;
  };
  const shadedOf = (source: Source, key: string, indoors = true): ShadedSource => {
    const both = indoors ? key : `${key} from outside`;
    const known = sources.get(both);
    if (known !== undefined) return known;
    const prepared = prepareSource(source);
    const bare = shadedSource(prepared, []);
    const before = indoors ? occludersFor(occluders, scene.room, bare) : occluders;
    const shaded = shadedSource(prepared, before);
    sources.set(both, shaded);
    return shaded;
  };
  const directOf = (source: Source, key: string, meter: Meter): number => {
    const both = `${key} at ${meterKey(meter)}`;
    const known = directs.get(both);
    if (known !== undefined) return known;
    const shaded = shadedOf(source, key, isIndoors(whole.world, ...meter.at));
    const direct = shadedReading(shaded, meter.at, meter.facing, meter.receptor, scratch);
    directs.set(both, direct);
    return direct;
  };
  const bouncedOf = (
    kept: KeptView,
    source: Source,
    key: string,
    meter: Meter,
    patience: Patience = "long",
  ): BouncedReach => {
    const own = reaches.get(kept) ?? new Map<string, BouncedReach>();
    reaches.set(kept, own);
    const long = own.get(key);
    if (long !== undefined && (patience === "long" || long.usual === long.sets)) return long;
    const both = patience === "long" ? key : `${key} in short`;
    const known = own.get(both);
    if (known !== undefined) return known;
    const reach = reachOf(kept, shadedOf(source, key), directOf(source, key, meter), patience);
    own.set(both, reach);
    return reach;
  };
  const meanOf = (set: KeptView, source: Source, key: string, sets: number): number => {
    const own = means.get(set) ?? new Map<string, number>();
    means.set(set, own);
    const both = `${sets} sets of ${key}`;
    const known = own.get(both);
    if (known !== undefined) return known;
    const mean = bouncedBy(set, shadedOf(source, key), sets);
    own.set(both, mean);
    return mean;
  };
  const slopesAt = (kept: KeptView, source: Source, key: string, meter: Meter): Float64Array => {
    const own = slopes.get(kept) ?? new Map<string, Float64Array>();
    slopes.set(kept, own);
    const known = own.get(key);
    if (known !== undefined) return known;
    const { usual } = bouncedOf(kept, source, key, meter, "short");
    const found = slopesOf(kept, shadedOf(source, key), usual);
    own.set(key, found);
    return found;
  };
  return {
    fork: () => lightFrom(shared, copyOf(known)),
    withStands: (moved) =>
      lightFrom(
        { ...shared, scene: moved, occluders: occludersOf(moved) },
        { ...copyOf(known), sources: new Map(), directs: new Map() },
      ),
    reach: (source, held, patience) => {
      const key = sourceKey(source);
      const { shut, kept, meter } = spotOf(held);
      if (shut) return noReach;
      const { bounced, error } = bouncedOf(kept, source, key, meter, patience);
      return { direct: directOf(source, key, meter), bounced, error };
    },
    glance: (source, held) => {
      const key = sourceKey(source);
      const spot = spotOf(held);
      if (spot.shut) return noReach;
      spot.glanced ??= keptAt(glanced(), spot.meter);
      const { bounced, error } = bouncedOf(spot.glanced, source, key, spot.meter);
      return { direct: directOf(source, key, spot.meter), bounced, error };
    },
    slope: (source, held, owners) => {
      const { shut, kept, meter } = spotOf(held);
      if (shut) return 0;
      const slopes = slopesAt(kept, source, sourceKey(source), meter);
      // By the order of the set, whatever the order asked for.
      return kept.surfaces.owners.reduce(
        (sum, owner, i) => (owners.includes(owner) ? sum + (slopes[i] as number) : sum),
        0,
      );
    },
    direct: (source, held) => {
      const { shut, meter } = spotOf(held);
      return shut ? 0 : directOf(source, sourceKey(source), meter);
    },
    contributors: (lights, held) => {
      const spot = spotOf(held);
      const { shut, kept, meter } = spot;
      if (shut) return [];
      spot.blacks ??= blackSets(kept);
      const keys = lights.map(({ source }) => sourceKey(source));
      const total = (bounced: (source: Source, key: string) => number): number =>
        sumOf(
          lights.map(({ source, energy }, i) => {
            const key = keys[i] as string;
            return energy * (directOf(source, key, meter) + bounced(source, key));
          }),
        );
      // All by the same paths, so that what is not known of one is not known of the other.
      const read = (set: KeptView): number =>
        total((source, key) => {
          const { bounced, sets, usual } = bouncedOf(kept, source, key, meter);
          return set === kept && usual === sets ? bounced : meanOf(set, source, key, usual);
        });
      const reading = total((source, key) => bouncedOf(kept, source, key, meter).bounced);
      return contributors(reading, read(kept), spot.blacks, read);
    },
  };
}
