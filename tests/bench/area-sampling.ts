import type { Scene, Source, Station } from "../../src/scene/types.js";

/**
 * The baseline of the direct-light bench: readings as the mean over random points of the emitting area, uniform over
 * it, without allocation. It knows nothing that makes a shape easier than another.
 */
export interface Sampler {
  /** One sum of `count` random points for a source and a station, per lumen-second; also the sum of squares. */
  readonly read: (source: Source, station: Station, count: number) => number;
  /** Mean of the squares of the last reading. */
  readonly squares: () => number;
}

/** A sampler with a fixed seed. */
export function areaSampler(seed: number): Sampler {
  let state = seed | 1;
  let squares = 0;
  const random = (): number => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 4_294_967_296;
  };
  const read = (source: Source, station: Station, count: number): number => {
    const { shape, centre: c, axis: n, across: a, along: b } = source;
    const [px, py, pz] = station.at;
    const [mx, my, mz] = station.facing;
    const dome = station.receptor === "dome";
    const radius = shape.kind === "rectangle" ? 0 : shape.radius;
    const straight = shape.kind === "capsule" ? shape.length - 2 * radius : 0;
    let sum = 0;
    squares = 0;
    for (let i = 0; i < count; i++) {
      // Place and outward direction in the lamp's own frame: across, along, axis.
      let u = 0;
      let v = 0;
      let w = 0;
      let ou = 0;
      let ov = 0;
      let ow = 1;
      if (shape.kind === "rectangle") {
        u = (random() - 0.5) * shape.width;
        v = (random() - 0.5) * shape.height;
      } else if (shape.kind === "disc") {
        const r = radius * Math.sqrt(random());
        const turn = 2 * Math.PI * random();
        u = r * Math.cos(turn);
        v = r * Math.sin(turn);
      } else {
        const turn = 2 * Math.PI * random();
        const side = random() * (straight + 2 * radius) < straight;
        ov = side ? 0 : 2 * random() - 1;
        const r = Math.sqrt(1 - ov * ov);
        ou = r * Math.cos(turn);
        ow = r * Math.sin(turn);
        u = radius * ou;
        v = radius * ov + (side ? (random() - 0.5) * straight : ov >= 0 ? straight / 2 : -straight / 2);
        w = radius * ow;
      }
      const x = c[0] + u * a[0] + v * b[0] + w * n[0] - px;
      const y = c[1] + u * a[1] + v * b[1] + w * n[1] - py;
      const z = c[2] + u * a[2] + v * b[2] + w * n[2] - pz;
      const d2 = x * x + y * y + z * z;
      const away = -(
        x * (ou * a[0] + ov * b[0] + ow * n[0]) +
        y * (ou * a[1] + ov * b[1] + ow * n[1]) +
        z * (ou * a[2] + ov * b[2] + ow * n[2])
      );
      const facing = x * mx + y * my + z * mz;
      const response = dome ? (Math.sqrt(d2) + facing) / 2 : facing;
      if (away <= 0 || response <= 0) continue;
      const value = (away * response) / (Math.PI * d2 * d2);
      sum += value;
      squares += value * value;
    }
    squares /= count;
    return sum / count;
  };
  return { read, squares: () => squares };
}

/** The pairs of a scene that give any light at all, by their exact values. */
export function litPairs(
  scene: Scene,
  exact: Float64Array,
): readonly { readonly source: Source; readonly station: Station; readonly exact: number }[] {
  const pairs: { source: Source; station: Station; exact: number }[] = [];
  scene.stations.forEach((station, i) => {
    scene.sources.forEach((source, j) => {
      const value = exact[i * scene.sources.length + j] ?? 0;
      if (value > 0) pairs.push({ source, station, exact: value });
    });
  });
  return pairs;
}
