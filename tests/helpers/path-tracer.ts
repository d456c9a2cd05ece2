import type { SceneJson } from "../../src/scene/export.js";

/**
 * Light at a station by following random paths, worked out from the exported scene alone, in another way than the
 * program does: paths start at the receptor, every point on them asks each light for itself, and lights that a path
 * runs into count too; the two are weighed by the balance heuristic (Veach and Guibas, SIGGRAPH 95, 419).
 */
export interface Traced {
  /** Per lm s of each source, 1/m2: mean and standard error of what comes straight, by surfaces, and of both. */
  readonly direct: Float64Array;
  readonly bounced: Float64Array;
  readonly total: Float64Array;
  readonly directError: Float64Array;
  readonly bouncedError: Float64Array;
  readonly totalError: Float64Array;
  /** The sum over the sources at their energies, lx s. */
  readonly mixed: number;
  readonly mixedError: number;
}

type Triple = readonly [number, number, number];

const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Triple, b: Triple): Triple => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Triple): Triple => {
  const n = Math.sqrt(dot(a, a));
  return [a[0] / n, a[1] / n, a[2] / n];
};

/** A sheet: plane and edges, as one row of numbers. */
interface Sheet {
  readonly n: Triple;
  readonly d: number;
  /** a, b, c, e for each edge: inside is a x + b y + c z <= e. */
  readonly edges: Float64Array;
  readonly front: number;
  readonly back: number;
}

/** A body as a quadric: an egg by the rows that make it the unit sphere, a rod by its ends. */
interface Egg {
  readonly c: Triple;
  readonly rows: readonly [Triple, Triple, Triple];
  readonly rho: number;
}

interface Rod {
  readonly a: Triple;
  readonly b: Triple;
  readonly r: number;
  readonly rho: number;
}

interface Lamp {
  readonly kind: string;
  readonly c: Triple;
  readonly axis: Triple;
  readonly u: Triple;
  readonly v: Triple;
  /** Half width and half height; radius; half length between the ends' centres. */
  readonly p: number;
  readonly q: number;
  readonly area: number;
  readonly luminance: number;
  readonly flat: boolean;
  readonly share: (cosine: number) => number;
  readonly energy: number;
}

/** Rays start and end this far off what they leave and meet, m. */
const SKIN = 1e-8;

/** A scene made ready for paths. */
export class PathTracer {
  private readonly sheets: Sheet[] = [];
  private readonly eggs: Egg[] = [];
  private readonly rods: Rod[] = [];
  private readonly lamps: Lamp[];
  private hitT = 0;
  private hitRho = 0;
  private readonly n = new Float64Array(3);
  private readonly s = new Float64Array(6);

  constructor(
    private readonly scene: SceneJson,
    private readonly random: () => number,
  ) {
    for (const polygon of scene.polygons) {
      const edges: number[] = [];
      const m = polygon.vertices.length;
      polygon.vertices.forEach((a, i) => {
        const out = cross(minus(polygon.vertices[(i + 1) % m] as Triple, a), polygon.normal);
        edges.push(...out, dot(out, a));
      });
      this.sheets.push({
        n: polygon.normal,
        d: dot(polygon.normal, polygon.vertices[0] as Triple),
        edges: Float64Array.from(edges),
        front: polygon.front_reflectance,
        back: polygon.back_reflectance,
      });
    }
    for (const { centre, radius: r, reflectance } of scene.spheres) {
      this.eggs.push({
        c: centre,
        rows: [
          [1 / r, 0, 0],
          [0, 1 / r, 0],
          [0, 0, 1 / r],
        ],
        rho: reflectance,
      });
    }
    for (const { centre, axes, reflectance } of scene.ellipsoids) {
      const row = (a: Triple): Triple => [a[0] / dot(a, a), a[1] / dot(a, a), a[2] / dot(a, a)];
      this.eggs.push({ c: centre, rows: [row(axes[0]), row(axes[1]), row(axes[2])], rho: reflectance });
    }
    for (const { from, to, radius, reflectance } of scene.capsules) {
      this.rods.push({ a: from, b: to, r: radius, rho: reflectance });
    }
    this.lamps = scene.sources.map(lampOf);
  }

  /** Follows `batches` times `side` squared paths from a station. */
  station(index: number, batches: number, side: number): Traced {
    const lamps = this.lamps.length;
    const { at, facing, receptor } = this.scene.stations[index] as SceneJson["stations"][number];
    const dome = receptor === "dome";
    const per = side * side;
    const sums = Array.from({ length: 3 * lamps + 1 }, () => ({ sum: 0, squares: 0 }));
    const put = (slot: number, value: number): void => {
      const row = sums[slot] as { sum: number; squares: number };
      row.sum += value;
      row.squares += value * value;
    };
    const direct = new Float64Array(lamps);
    const bounced = new Float64Array(lamps);
    const start = this.footing(at, facing);
    for (let b = 0; b < batches; b++) {
      direct.fill(0);
      bounced.fill(0);
      const turn = Math.floor(this.random() * per);
      for (let k = 0; k < per; k++) {
        const other = (k * 7919 + turn) % per;
        this.path(
          start,
          facing,
          dome,
          ((k % side) + this.random()) / side,
          (Math.floor(k / side) + this.random()) / side,
          ((other % side) + this.random()) / side,
          (Math.floor(other / side) + this.random()) / side,
          direct,
          bounced,
        );
      }
      let mixed = 0;
      for (let s = 0; s < lamps; s++) {
        const d = (direct[s] as number) / per;
        const e = (bounced[s] as number) / per;
        put(s, d);
        put(lamps + s, e);
        put(2 * lamps + s, d + e);
        mixed += (d + e) * (this.lamps[s] as Lamp).energy;
      }
      put(3 * lamps, mixed);
    }
    const mean = (slot: number): number => (sums[slot] as { sum: number }).sum / batches;
    const error = (slot: number): number => {
      const { sum, squares } = sums[slot] as { sum: number; squares: number };
      const m = sum / batches;
      return Math.sqrt(Math.max(0, squares / batches - m * m) / (batches - 1));
    };
    const row = (first: number, f: (slot: number) => number): Float64Array =>
      Float64Array.from({ length: lamps }, (_, s) => f(first + s));
    return {
      direct: row(0, mean),
      bounced: row(lamps, mean),
      total: row(2 * lamps, mean),
      directError: row(0, error),
      bouncedError: row(lamps, error),
      totalError: row(2 * lamps, error),
      mixed: mean(3 * lamps),
      mixedError: error(3 * lamps),
    };
  }

  /** A station on a sheet reads the side it looks to; one on bodies stands clear of them by a hair. */
  private footing(at: Triple, facing: Triple): Triple {
    const out: [number, number, number] = [0, 0, 0];
    let found = false;
    const lift = (x: number, y: number, z: number): void => {
      const size = Math.sqrt(x * x + y * y + z * z);
      found = true;
      out[0] += x / size;
      out[1] += y / size;
      out[2] += z / size;
    };
    for (const { c, rows } of this.eggs) {
      const e = rows.map((r) => dot(r, minus(at, c)));
      if (Math.abs(e.reduce((sum, x) => sum + x * x, -1)) > 1e-5) continue;
      const g = (k: 0 | 1 | 2): number => rows.reduce((sum, r, i) => sum + (e[i] as number) * r[k], 0);
      lift(g(0), g(1), g(2));
    }
    for (const { a, b, r } of this.rods) {
      const span = minus(b, a);
      const uu = dot(span, span);
      const k = uu > 0 ? Math.min(1, Math.max(0, dot(minus(at, a), span) / uu)) : 0;
      const d = minus(at, [a[0] + k * span[0], a[1] + k * span[1], a[2] + k * span[2]]);
      if (Math.abs(Math.sqrt(dot(d, d)) - r) < 1e-6) lift(...d);
    }
    const way = found ? out : facing;
    return [at[0] + SKIN * way[0], at[1] + SKIN * way[1], at[2] + SKIN * way[2]];
  }

  /** One path; adds what it brings. */
  private path(
    start: Triple,
    facing: Triple,
    dome: boolean,
    r0: number,
    r1: number,
    q0: number,
    q1: number,
    direct: Float64Array,
    bounced: Float64Array,
  ): void {
    const { random, lamps, n } = this;
    let px = start[0];
    let py = start[1];
    let pz = start[2];
    n[0] = facing[0];
    n[1] = facing[1];
    n[2] = facing[2];
    let through = 1;
    let wide = dome;
    let out = direct;
    for (let depth = 0; depth < 200; depth++) {
      const first = depth === 0;
      for (let s = 0; s < lamps.length; s++) {
        out[s] =
          (out[s] as number) +
          through *
            this.askLamp(lamps[s] as Lamp, px, py, pz, wide, first ? q0 : random(), first ? q1 : random());
      }
      // A direction as the receptor weighs them.
      const a = first ? r0 : random();
      const b = 2 * Math.PI * (first ? r1 : random());
      const up = wide ? 2 * Math.sqrt(a) - 1 : Math.sqrt(a);
      const flat = Math.sqrt(Math.max(0, 1 - up * up));
      const nx = n[0] as number;
      const ny = n[1] as number;
      const nz = n[2] as number;
      const level = Math.sqrt(nx * nx + ny * ny);
      const ux = level > 1e-9 ? -ny / level : 1;
      const uy = level > 1e-9 ? nx / level : 0;
      const c = flat * Math.cos(b);
      const e = flat * Math.sin(b);
      const dx = c * ux - e * nz * uy + up * nx;
      const dy = c * uy + e * nz * ux + up * ny;
      const dz = e * (nx * uy - ny * ux) + up * nz;
      this.trace(px, py, pz, dx, dy, dz);
      const whole = wide ? 2 * Math.PI : Math.PI;
      const density = wide ? (1 + up) / (4 * Math.PI) : up / Math.PI;
      for (let s = 0; s < lamps.length; s++) {
        const lamp = lamps[s] as Lamp;
        const t = this.runInto(lamp, px, py, pz, dx, dy, dz);
        if (!(t > SKIN && t < this.hitT + 2 * SKIN)) continue;
        // runInto leaves luminance share and the density of asking for this point.
        const asked = this.s[5] as number;
        out[s] =
          (out[s] as number) +
          (through * whole * lamp.luminance * (this.s[4] as number) * density) / (density + asked);
      }
      if (!(this.hitT < Number.POSITIVE_INFINITY)) return;
      const rho = this.hitRho;
      if (!(rho > 0)) return;
      if (first) through *= wide ? 2 * rho : rho;
      else if (depth < 3) through *= rho;
      else if (random() > rho) return;
      px += this.hitT * dx + SKIN * (n[0] as number);
      py += this.hitT * dy + SKIN * (n[1] as number);
      pz += this.hitT * dz + SKIN * (n[2] as number);
      wide = false;
      out = bounced;
    }
  }

  /** Nearest surface along a ray; leaves the way, its reflectance, and the normal towards the ray in `n`. */
  private trace(ox: number, oy: number, oz: number, dx: number, dy: number, dz: number): void {
    const { n } = this;
    let best = Number.POSITIVE_INFINITY;
    let rho = 0;
    let nx = 0;
    let ny = 0;
    let nz = 0;
    for (const { n: m, d, edges, front, back } of this.sheets) {
      const rate = m[0] * dx + m[1] * dy + m[2] * dz;
      if (rate === 0) continue;
      const t = (d - m[0] * ox - m[1] * oy - m[2] * oz) / rate;
      if (!(t > 0 && t < best)) continue;
      if (!within(edges, ox + t * dx, oy + t * dy, oz + t * dz)) continue;
      best = t;
      const sign = rate < 0 ? 1 : -1;
      rho = rate < 0 ? front : back;
      nx = sign * m[0];
      ny = sign * m[1];
      nz = sign * m[2];
    }
    for (const egg of this.eggs) {
      const { c, rows } = egg;
      const t = meetEgg(egg, ox - c[0], oy - c[1], oz - c[2], dx, dy, dz);
      if (t < 0 || t >= best) continue;
      best = t;
      rho = t === 0 ? 0 : egg.rho;
      const x = ox + t * dx - c[0];
      const y = oy + t * dy - c[1];
      const z = oz + t * dz - c[2];
      nx = 0;
      ny = 0;
      nz = 0;
      for (const r of rows) {
        const k = r[0] * x + r[1] * y + r[2] * z;
        nx += k * r[0];
        ny += k * r[1];
        nz += k * r[2];
      }
      const size = Math.sqrt(nx * nx + ny * ny + nz * nz);
      nx /= size;
      ny /= size;
      nz /= size;
    }
    for (const rod of this.rods) {
      const t = meetRod(rod, ox, oy, oz, dx, dy, dz);
      if (t < 0 || t >= best) continue;
      best = t;
      rho = t === 0 ? 0 : rod.rho;
      const { a, b, r } = rod;
      const x = ox + t * dx - a[0];
      const y = oy + t * dy - a[1];
      const z = oz + t * dz - a[2];
      const ux = b[0] - a[0];
      const uy = b[1] - a[1];
      const uz = b[2] - a[2];
      const uu = ux * ux + uy * uy + uz * uz;
      const k = uu > 0 ? Math.min(1, Math.max(0, (x * ux + y * uy + z * uz) / uu)) : 0;
      nx = (x - k * ux) / r;
      ny = (y - k * uy) / r;
      nz = (z - k * uz) / r;
    }
    this.hitT = best;
    this.hitRho = rho;
    n[0] = nx;
    n[1] = ny;
    n[2] = nz;
  }

  /** True when something stands on the way. */
  private hidden(
    ox: number,
    oy: number,
    oz: number,
    dx: number,
    dy: number,
    dz: number,
    far: number,
  ): boolean {
    for (const { n: m, d, edges } of this.sheets) {
      const rate = m[0] * dx + m[1] * dy + m[2] * dz;
      if (rate === 0) continue;
      const t = (d - m[0] * ox - m[1] * oy - m[2] * oz) / rate;
      if (t > 0 && t < far && within(edges, ox + t * dx, oy + t * dy, oz + t * dz)) return true;
    }
    for (const egg of this.eggs) {
      const t = meetEgg(egg, ox - egg.c[0], oy - egg.c[1], oz - egg.c[2], dx, dy, dz);
      if (t >= 0 && t < far) return true;
    }
    for (const rod of this.rods) {
      const t = meetRod(rod, ox, oy, oz, dx, dy, dz);
      if (t >= 0 && t < far) return true;
    }
    return false;
  }

  /** Asks one point of a lamp, weighed against the chance that the path runs into it by itself. */
  private askLamp(
    lamp: Lamp,
    px: number,
    py: number,
    pz: number,
    wide: boolean,
    a: number,
    b: number,
  ): number {
    const { n, s } = this;
    const asked = pointOn(lamp, px, py, pz, a, b, s);
    if (!(asked > 0)) return 0;
    const dx = s[0] as number;
    const dy = s[1] as number;
    const dz = s[2] as number;
    const far = s[3] as number;
    const cosine = dx * (n[0] as number) + dy * (n[1] as number) + dz * (n[2] as number);
    const response = wide ? (1 + cosine) / 2 : cosine;
    if (!(response > 0)) return 0;
    const share = s[4] as number;
    if (!(share > 0)) return 0;
    if (this.hidden(px, py, pz, dx, dy, dz, far - 2 * SKIN)) return 0;
    const density = response / (wide ? 2 * Math.PI : Math.PI);
    return (lamp.luminance * share * response) / (asked + density);
  }

  /** The way to a lamp along a ray, or -1; leaves the luminance share there and the density of asking it. */
  private runInto(
    lamp: Lamp,
    ox: number,
    oy: number,
    oz: number,
    dx: number,
    dy: number,
    dz: number,
  ): number {
    const { c, axis, u, v, p, q, kind } = lamp;
    const { s } = this;
    const x = c[0] - ox;
    const y = c[1] - oy;
    const z = c[2] - oz;
    if (lamp.flat) {
      const rate = -(dx * axis[0] + dy * axis[1] + dz * axis[2]);
      if (!(rate > 0)) return -1;
      const t = -(x * axis[0] + y * axis[1] + z * axis[2]) / rate;
      if (!(t > 0)) return -1;
      const ex = t * dx - x;
      const ey = t * dy - y;
      const ez = t * dz - z;
      if (kind === "disc") {
        if (ex * ex + ey * ey + ez * ez > p * p) return -1;
      } else if (
        Math.abs(ex * u[0] + ey * u[1] + ez * u[2]) > p ||
        Math.abs(ex * v[0] + ey * v[1] + ez * v[2]) > q
      )
        return -1;
      s[4] = lamp.share(rate);
      s[5] = (t * t) / (lamp.area * rate);
      return t;
    }
    s[4] = 1;
    if (kind === "sphere") {
      const along = x * dx + y * dy + z * dz;
      const dd = x * x + y * y + z * z;
      const root = p * p - dd + along * along;
      if (!(root > 0) || dd < p * p) return -1;
      s[5] = 1 / coneAngle(p * p, dd);
      return along - Math.sqrt(root);
    }
    const t = meetRod(
      {
        a: [c[0] - q * v[0], c[1] - q * v[1], c[2] - q * v[2]],
        b: [c[0] + q * v[0], c[1] + q * v[1], c[2] + q * v[2]],
        r: p,
        rho: 0,
      },
      ox,
      oy,
      oz,
      dx,
      dy,
      dz,
    );
    if (!(t > 0)) return -1;
    const ex = t * dx - x;
    const ey = t * dy - y;
    const ez = t * dz - z;
    const k = Math.min(q, Math.max(-q, ex * v[0] + ey * v[1] + ez * v[2]));
    const cosine = -((ex - k * v[0]) * dx + (ey - k * v[1]) * dy + (ez - k * v[2]) * dz) / p;
    if (!(cosine > 0)) return -1;
    s[5] = (t * t) / (lamp.area * cosine);
    return t;
  }
}

function within(edges: Float64Array, x: number, y: number, z: number): boolean {
  for (let k = 0; k < edges.length; k += 4) {
    if (
      (edges[k] as number) * x + (edges[k + 1] as number) * y + (edges[k + 2] as number) * z >
      (edges[k + 3] as number)
    )
      return false;
  }
  return true;
}

/** Way into an egg from x, y, z relative to its centre; 0 from inside, -1 past it. */
function meetEgg({ rows }: Egg, x: number, y: number, z: number, dx: number, dy: number, dz: number): number {
  let a = 0;
  let b = 0;
  let c = -1;
  for (let k = 0; k < 3; k++) {
    const r = rows[k] as Triple;
    const o = r[0] * x + r[1] * y + r[2] * z;
    const w = r[0] * dx + r[1] * dy + r[2] * dz;
    a += w * w;
    b += o * w;
    c += o * o;
  }
  if (c < 0) return 0;
  if (b >= 0) return -1;
  const root = b * b - a * c;
  return root > 0 ? (-b - Math.sqrt(root)) / a : -1;
}

/** Way into a rod: the least of its tube and its two end balls; 0 from inside, -1 past it. */
function meetRod(
  { a, b, r }: Rod,
  ox: number,
  oy: number,
  oz: number,
  dx: number,
  dy: number,
  dz: number,
): number {
  const ux = b[0] - a[0];
  const uy = b[1] - a[1];
  const uz = b[2] - a[2];
  const uu = ux * ux + uy * uy + uz * uz;
  const x = ox - a[0];
  const y = oy - a[1];
  const z = oz - a[2];
  const xu = x * ux + y * uy + z * uz;
  const k = uu > 0 ? Math.min(1, Math.max(0, xu / uu)) : 0;
  const fx = x - k * ux;
  const fy = y - k * uy;
  const fz = z - k * uz;
  if (fx * fx + fy * fy + fz * fz < r * r) return 0;
  let best = -1;
  const ball = (bx: number, by: number, bz: number): void => {
    const m = bx * dx + by * dy + bz * dz;
    const root = m * m - (bx * bx + by * by + bz * bz) + r * r;
    if (m >= 0 || !(root > 0)) return;
    const t = -m - Math.sqrt(root);
    if (t > 0 && (best < 0 || t < best)) best = t;
  };
  ball(x, y, z);
  ball(x - ux, y - uy, z - uz);
  if (uu > 0) {
    const du = (dx * ux + dy * uy + dz * uz) / uu;
    const mu = xu / uu;
    const wx = dx - du * ux;
    const wy = dy - du * uy;
    const wz = dz - du * uz;
    const mx = x - mu * ux;
    const my = y - mu * uy;
    const mz = z - mu * uz;
    const qa = wx * wx + wy * wy + wz * wz;
    const qb = wx * mx + wy * my + wz * mz;
    const root = qb * qb - qa * (mx * mx + my * my + mz * mz - r * r);
    if (qa > 1e-14 && root > 0) {
      const t = (-qb - Math.sqrt(root)) / qa;
      const at = mu + t * du;
      if (t > 0 && at >= 0 && at <= 1 && (best < 0 || t < best)) best = t;
    }
  }
  return best;
}

/** Solid angle of a ball of squared radius rr at squared distance dd, sr. */
function coneAngle(rr: number, dd: number): number {
  const sine2 = rr / dd;
  return (2 * Math.PI * sine2) / (1 + Math.sqrt(1 - sine2));
}

/** Writes direction, way and luminance share of a point of the lamp; gives the density of asking it, per sr. */
function pointOn(
  lamp: Lamp,
  px: number,
  py: number,
  pz: number,
  a: number,
  b: number,
  s: Float64Array,
): number {
  const { kind, c, axis, u, v, p, q } = lamp;
  let x = c[0] - px;
  let y = c[1] - py;
  let z = c[2] - pz;
  if (kind === "sphere") {
    const dd = x * x + y * y + z * z;
    if (dd <= p * p) return 0;
    const d = Math.sqrt(dd);
    const e = frame([x / d, y / d, z / d]);
    const angle = coneAngle(p * p, dd);
    const up = 1 - (a * angle) / (2 * Math.PI);
    const flat = Math.sqrt(Math.max(0, 1 - up * up));
    const ca = flat * Math.cos(2 * Math.PI * b);
    const sa = flat * Math.sin(2 * Math.PI * b);
    s[0] = (up * x) / d + ca * e[0] + sa * e[3];
    s[1] = (up * y) / d + ca * e[1] + sa * e[4];
    s[2] = (up * z) / d + ca * e[2] + sa * e[5];
    s[3] = d * up - Math.sqrt(Math.max(0, p * p - dd * flat * flat));
    s[4] = 1;
    return 1 / angle;
  }
  let nx = axis[0];
  let ny = axis[1];
  let nz = axis[2];
  if (lamp.flat) {
    const r = kind === "disc" ? p * Math.sqrt(a) : 0;
    const i = kind === "disc" ? r * Math.cos(2 * Math.PI * b) : p * (2 * a - 1);
    const j = kind === "disc" ? r * Math.sin(2 * Math.PI * b) : q * (2 * b - 1);
    x += i * u[0] + j * v[0];
    y += i * u[1] + j * v[1];
    z += i * u[2] + j * v[2];
  } else {
    // Equal heights of a rod with round ends have equal areas (Archimedes).
    const h = (2 * a - 1) * (q + p);
    const k = Math.min(q, Math.max(-q, h));
    const rise = (h - k) / p;
    const side = Math.sqrt(Math.max(0, 1 - rise * rise));
    const ca = side * Math.cos(2 * Math.PI * b);
    const sa = side * Math.sin(2 * Math.PI * b);
    nx = ca * u[0] + sa * axis[0] + rise * v[0];
    ny = ca * u[1] + sa * axis[1] + rise * v[1];
    nz = ca * u[2] + sa * axis[2] + rise * v[2];
    x += k * v[0] + p * nx;
    y += k * v[1] + p * ny;
    z += k * v[2] + p * nz;
  }
  const d2 = x * x + y * y + z * z;
  const d = Math.sqrt(d2);
  const cosine = -(x * nx + y * ny + z * nz) / d;
  if (!(cosine > 0)) return 0;
  s[0] = x / d;
  s[1] = y / d;
  s[2] = z / d;
  s[3] = d;
  s[4] = lamp.flat ? lamp.share(cosine) : 1;
  return d2 / (lamp.area * cosine);
}

function frame(n: Triple): readonly [number, number, number, number, number, number] {
  const u = unit(Math.abs(n[2]) < 0.9 ? [-n[1], n[0], 0] : [0, -n[2], n[1]]);
  return [...u, ...cross(n, u)] as unknown as readonly [number, number, number, number, number, number];
}

/** The luminance per lm s and its course over the angle, as the guide to the exported scene says. */
function lampOf(source: SceneJson["sources"][number]): Lamp {
  const { shape, beam } = source;
  const flat = shape.kind === "disc" || shape.kind === "rectangle";
  const radius = shape.radius ?? 0;
  const p = shape.kind === "rectangle" ? (shape.width ?? 0) / 2 : radius;
  const q =
    shape.kind === "rectangle"
      ? (shape.height ?? 0) / 2
      : shape.kind === "capsule"
        ? (shape.length ?? 0) / 2 - radius
        : radius;
  const area =
    shape.kind === "disc"
      ? Math.PI * p * p
      : shape.kind === "rectangle"
        ? 4 * p * q
        : shape.kind === "sphere"
          ? 4 * Math.PI * p * p
          : 4 * Math.PI * p * (p + q);
  let b = 1;
  let share = (_: number): number => 1;
  if (flat && beam.kind === "cosine_power") {
    const n = beam.exponent ?? 1;
    b = 2 / (n + 1);
    share = (cosine) => Math.exp((n - 1) * Math.log(cosine));
  }
  if (flat && beam.kind === "grid") {
    const half = ((beam.cutoff ?? 0) * Math.PI) / 360;
    b = 1 - half / Math.tan(half);
    share = (cosine) =>
      Math.max(0, 1 - Math.sqrt(Math.max(0, 1 - cosine * cosine)) / cosine / Math.tan(half));
  }
  return {
    kind: shape.kind,
    c: source.centre,
    axis: source.axis,
    u: source.across,
    v: source.along,
    p,
    q,
    area,
    luminance: area > 0 ? 1 / (Math.PI * area * b) : 0,
    flat,
    share,
    energy: source.energy,
  };
}
