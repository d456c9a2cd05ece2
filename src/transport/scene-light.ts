import { emptyVector } from "../physics/light-vector.js";
import type { Scene, Source, Station } from "../scene/types.js";
import { bouncedColumn } from "./bounce/column.js";
import { type BlackSet, blackSets, contributors } from "./bounce/contributors.js";
import { type KeptSet, keepSet, keptAt } from "./bounce/kept-set.js";
import type { Contributor, Quality } from "./bounce/types.js";
import { prepareSource } from "./direct.js";
import { occludersOf } from "./hiding/occluder.js";
import { type ShadedSource, shadedReading, shadedSource } from "./hiding/shaded.js";
import { asStation, type Meter, meterKey } from "./meter.js";
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

/** A source and the luminous energy it is to give, lm s. */
export interface PoweredSource {
  readonly source: Source;
  readonly energy: number;
}

/**
 * The light of a scene at any meter from any source, per lumen-second of that source. What depends on the set alone is
 * worked out once, what depends on a source's place once for each place; powers and colours cost nothing. Answers do
 * not depend on the order of the questions, except that meters announced together are looked at together.
 */
export interface SceneLight {
  /** Announces meters that will be asked for, so that they share one working. */
  readonly ask: (meters: readonly Meter[]) => void;
  readonly reach: (source: Source, meter: Meter) => Reach;
  /** The direct part alone, without the work that bounced light takes, lx s per lm s. */
  readonly direct: (source: Source, meter: Meter) => number;
  /**
   * What the surfaces do for a meter under some lights, the greatest first. Worked out when first asked for, for all
   * meters that share a working: some times the cost of a reading.
   */
  readonly contributors: (lights: readonly PoweredSource[], meter: Meter) => readonly Contributor[];
  /**
   * A light of the same set that knows what this one knows. What it works out further, for lamps that move and meters
   * that follow them, is its own and is dropped with it; only the set itself is worked out once for both.
   */
  readonly fork: () => SceneLight;
}

/** A place that is looked at with a kept set, and its station there. */
interface Spot {
  readonly kept: KeptSet;
  readonly station: number;
}

/** New meters nearer than this to a station that is known share its cells, m. */
const NEAR = 0.05;

/** What a light has worked out so far. */
interface Known {
  readonly spots: Map<string, Spot>;
  readonly sets: KeptSet[];
  readonly sources: Map<string, ShadedSource>;
  readonly columns: Map<KeptSet, Map<string, ReturnType<typeof bouncedColumn>>>;
  readonly directs: Map<string, number>;
  readonly blacks: Map<KeptSet, readonly BlackSet[]>;
}

/** What all forks of a light share. */
interface Shared {
  readonly scene: Scene;
  readonly quality: Quality;
  readonly occluders: ReturnType<typeof occludersOf>;
  /** The set at the scene's own stations; null before it is first asked for. */
  own: KeptSet | null;
}

/** The light of a scene; the scene's stations are looked at together from the start. */
export function sceneLight(scene: Scene, quality: Quality = "usual"): SceneLight {
  const known: Known = {
    spots: new Map(),
    sets: [],
    sources: new Map(),
    columns: new Map(),
    directs: new Map(),
    blacks: new Map(),
  };
  return lightFrom({ scene, quality, occluders: occludersOf(scene), own: null }, known);
}

function copyOf(known: Known): Known {
  return {
    spots: new Map(known.spots),
    sets: [...known.sets],
    sources: new Map(known.sources),
    columns: new Map([...known.columns].map(([kept, own]) => [kept, new Map(own)])),
    directs: new Map(known.directs),
    blacks: new Map(known.blacks),
  };
}

function lightFrom(shared: Shared, known: Known): SceneLight {
  const { scene, quality, occluders } = shared;
  const { spots, sets, sources, columns, directs, blacks } = known;
  const scratch = emptyVector();
  const announced = new Map<string, Meter>();

  const enter = (kept: KeptSet): void => {
    kept.stations.forEach((station, index) => {
      const key = meterKey(station);
      if (!spots.has(key)) spots.set(key, { kept, station: index });
    });
  };
  /** The set of which a station lies near a meter, if any. */
  const nearSet = ({ at }: Meter): KeptSet | undefined =>
    sets.find((set) =>
      set.stations.some((station) => station.at.every((x, i) => Math.abs(x - (at[i] as number)) < NEAR)),
    );
  const keep = (kept: KeptSet): void => {
    sets.push(kept);
    enter(kept);
  };
  const spotOf = (meter: Meter): Spot => {
    const key = meterKey(meter);
    const known = spots.get(key);
    if (known !== undefined) return known;
    // The scene's own stations first and by themselves, so that no other meter changes what they read.
    if (sets.length === 0) {
      shared.own ??= keepSet(scene, quality);
      keep(shared.own);
    }
    announced.set(key, meter);
    const waiting = [...announced.values()].filter((row) => !spots.has(meterKey(row)));
    announced.clear();
    const far: Station[] = [];
    const near = new Map<KeptSet, Station[]>();
    for (const row of waiting) {
      const set = nearSet(row);
      if (set === undefined) far.push(asStation(row));
      else near.set(set, [...(near.get(set) ?? []), asStation(row)]);
    }
    for (const [set, stations] of near) enter(keptAt(set, stations));
    if (far.length > 0) keep(keepSet({ ...scene, stations: far }, quality));
    return spots.get(key) as Spot;
  };
  const shadedOf = (source: Source, key: string): ShadedSource => {
    const known = sources.get(key);
    if (known !== undefined) return known;
    const prepared = prepareSource(source);
    const bare = shadedSource(prepared, []);
    const shaded = shadedSource(prepared, occludersFor(occluders, scene.room, bare));
    sources.set(key, shaded);
    return shaded;
  };
  const columnOf = (kept: KeptSet, source: Source, key: string): ReturnType<typeof bouncedColumn> => {
    const own = columns.get(kept) ?? new Map<string, ReturnType<typeof bouncedColumn>>();
    columns.set(kept, own);
    const known = own.get(key);
    if (known !== undefined) return known;
    const column = bouncedColumn(kept, shadedOf(source, key));
    own.set(key, column);
    return column;
  };
  const directOf = (source: Source, key: string, meter: Meter): number => {
    const both = `${key} at ${meterKey(meter)}`;
    const known = directs.get(both);
    if (known !== undefined) return known;
    const shaded = shadedOf(source, key);
    const direct = shadedReading(shaded, meter.at, meter.facing, meter.receptor, scratch);
    directs.set(both, direct);
    return direct;
  };
  const blacksOf = (kept: KeptSet): readonly BlackSet[] => {
    const known = blacks.get(kept) ?? blackSets(kept);
    blacks.set(kept, known);
    return known;
  };
  return {
    fork: () => lightFrom(shared, copyOf(known)),
    ask: (meters) => {
      for (const meter of meters) announced.set(meterKey(meter), meter);
    },
    reach: (source, meter) => {
      const key = sourceKey(source);
      const { kept, station } = spotOf(meter);
      const column = columnOf(kept, source, key);
      return {
        direct: directOf(source, key, meter),
        bounced: column.bounced[station] as number,
        error: column.error[station] as number,
      };
    },
    direct: (source, meter) => directOf(source, sourceKey(source), meter),
    contributors: (lights, meter) => {
      const { kept, station } = spotOf(meter);
      const keys = lights.map(({ source }) => sourceKey(source));
      const read = (set: KeptSet): number => {
        const parts = lights.map(({ source, energy }, i) => {
          const key = keys[i] as string;
          const bounced = columnOf(set, source, key).bounced[station] as number;
          return energy * (directOf(source, key, meter) + bounced);
        });
        // From the least to the greatest, so that the order of the lights changes no bit.
        return parts.sort((a, b) => a - b).reduce((sum, part) => sum + part, 0);
      };
      return contributors(read(kept), blacksOf(kept), read);
    },
  };
}
