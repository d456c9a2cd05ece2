/**
 * A convex body: the hull of some points, widened all round by an ellipsoid, or by a disc where its third axis is
 * nothing. Points, polygons, discs, ellipsoids, capsules and flat patches that bulge are all of this kind.
 */
export interface Convex {
  /** Three coordinates a point. */
  readonly points: Float64Array;
  /** Three semi-axes, square to each other, of what is put round every point; all 0 for nothing. */
  readonly axes: Float64Array;
  /** A place in it. */
  readonly middle: Float64Array;
}

/** Steps after which it is left open whether two bodies are apart. */
const STEPS = 12;
/** What a gap must be more than, as a share of the size of the numbers: rounding is no gap. */
const ROUNDING = 1e-12;

/** Where a body, or the hull of two, reaches least along a direction; written over by every search. */
interface Least {
  x: number;
  y: number;
  z: number;
  along: number;
}

/** Buffers for a search, written over by every one. */
export interface ApartWork {
  readonly from: Least;
  readonly to: Least;
  /** Shares of the two sides of a triangle that lead to its place nearest to nothing. */
  readonly shares: { first: number; second: number };
}

/** Buffers for a search. */
export function apartWork(): ApartWork {
  return {
    from: { x: 0, y: 0, z: 0, along: 0 },
    to: { x: 0, y: 0, z: 0, along: 0 },
    shares: { first: 0, second: 0 },
  };
}

/** Takes the place of a body that reaches least along a direction, where it reaches less far than what is held. */
function takeLeast(body: Convex, x: number, y: number, z: number, least: Least): void {
  const { points, axes } = body;
  let best = 0;
  let most = Number.POSITIVE_INFINITY;
  for (let i = 0; i < points.length; i += 3) {
    const along = x * (points[i] as number) + y * (points[i + 1] as number) + z * (points[i + 2] as number);
    if (along < most) {
      most = along;
      best = i;
    }
  }
  const a = x * (axes[0] as number) + y * (axes[1] as number) + z * (axes[2] as number);
  const b = x * (axes[3] as number) + y * (axes[4] as number) + z * (axes[5] as number);
  const c = x * (axes[6] as number) + y * (axes[7] as number) + z * (axes[8] as number);
  const size = Math.sqrt(a * a + b * b + c * c);
  if (!(most - size < least.along)) return;
  const s = size > 0 ? a / size : 0;
  const t = size > 0 ? b / size : 0;
  const u = size > 0 ? c / size : 0;
  least.along = most - size;
  least.x =
    (points[best] as number) - s * (axes[0] as number) - t * (axes[3] as number) - u * (axes[6] as number);
  least.y =
    (points[best + 1] as number) -
    s * (axes[1] as number) -
    t * (axes[4] as number) -
    u * (axes[7] as number);
  least.z =
    (points[best + 2] as number) -
    s * (axes[2] as number) -
    t * (axes[5] as number) -
    u * (axes[8] as number);
}

const limited = (share: number): number => (share > 0 ? Math.min(1, share) : 0);

/**
 * Finds the place nearest to nothing of a triangle that starts at v and has the sides e and f, from products of them:
 * within it, or on the best of its three sides.
 */
function nearestOfTriangle(
  ee: number,
  ef: number,
  ff: number,
  ve: number,
  vf: number,
  shares: { first: number; second: number },
): void {
  const flat = ee * ff - ef * ef;
  const a = (vf * ef - ve * ff) / flat;
  const b = (ve * ef - vf * ee) / flat;
  if (flat > 0 && a >= 0 && b >= 0 && a + b <= 1) {
    shares.first = a;
    shares.second = b;
    return;
  }
  // The square of the way from nothing to v + s e + t f, less that to v.
  const way = (s: number, t: number): number =>
    2 * (s * ve + t * vf) + s * s * ee + 2 * s * t * ef + t * t * ff;
  shares.first = ee > 0 ? limited(-ve / ee) : 0;
  shares.second = 0;
  let least = way(shares.first, 0);
  const onSecond = ff > 0 ? limited(-vf / ff) : 0;
  if (way(0, onSecond) < least) {
    shares.first = 0;
    shares.second = onSecond;
    least = way(0, onSecond);
  }
  // From the end of e to that of f.
  const across = ee - 2 * ef + ff;
  const over = across > 0 ? limited((ee - ef + ve - vf) / across) : 0;
  if (way(1 - over, over) < least) {
    shares.first = 1 - over;
    shares.second = over;
  }
}

/**
 * How far two bodies are apart at the least, m: a number that is never too great, and 0 where the search did not find
 * that there is a gap. With `also` the first body is the hull of both. The search ends at a gap of more than `wanted`.
 *
 * The place nearest to nothing in the set of all differences is closed in on from one supporting place to the next
 * (Gilbert, SIAM J. Control 4 (1966) 61; from memory), with the place before the last one held, until a plane parts the
 * bodies.
 */
export function apart(
  one: Convex,
  also: Convex | null,
  other: Convex,
  wanted: number,
  work: ApartWork,
): number {
  const { from, to, shares } = work;
  let x = (one.middle[0] as number) - (other.middle[0] as number);
  let y = (one.middle[1] as number) - (other.middle[1] as number);
  let z = (one.middle[2] as number) - (other.middle[2] as number);
  if (also !== null) {
    // From the place between the middles that is nearest to the middle of the other.
    const dx = (also.middle[0] as number) - (one.middle[0] as number);
    const dy = (also.middle[1] as number) - (one.middle[1] as number);
    const dz = (also.middle[2] as number) - (one.middle[2] as number);
    const dd = dx * dx + dy * dy + dz * dz;
    const t = dd > 0 ? Math.min(1, Math.max(0, -(x * dx + y * dy + z * dz) / dd)) : 0;
    x += t * dx;
    y += t * dy;
    z += t * dz;
  }
  let found = 0;
  // The supporting place before the last.
  let px = x;
  let py = y;
  let pz = z;
  for (let step = 0; step < STEPS; step++) {
    const size2 = x * x + y * y + z * z;
    if (!(size2 > 0)) return found;
    from.along = Number.POSITIVE_INFINITY;
    takeLeast(one, x, y, z, from);
    if (also !== null) takeLeast(also, x, y, z, from);
    to.along = Number.POSITIVE_INFINITY;
    takeLeast(other, -x, -y, -z, to);
    // The difference that reaches least along the direction.
    const gap = from.along + to.along;
    if (gap > ROUNDING * (Math.abs(from.along) + Math.abs(to.along)))
      found = Math.max(found, gap / Math.sqrt(size2));
    if (found > wanted) return found;
    const wx = from.x - to.x;
    const wy = from.y - to.y;
    const wz = from.z - to.z;
    const ex = wx - x;
    const ey = wy - y;
    const ez = wz - z;
    const fx = px - x;
    const fy = py - y;
    const fz = pz - z;
    const ve = x * ex + y * ey + z * ez;
    if (!(ve < 0)) return found;
    nearestOfTriangle(
      ex * ex + ey * ey + ez * ez,
      ex * fx + ey * fy + ez * fz,
      fx * fx + fy * fy + fz * fz,
      ve,
      x * fx + y * fy + z * fz,
      shares,
    );
    x += shares.first * ex + shares.second * fx;
    y += shares.first * ey + shares.second * fy;
    z += shares.first * ez + shares.second * fz;
    px = wx;
    py = wy;
    pz = wz;
  }
  return found;
}
