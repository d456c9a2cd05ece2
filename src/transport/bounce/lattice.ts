/**
 * Numbers from 0 to 1 that fill a cube evenly: an embedded lattice (Cools, Kuo and Nuyens, SIAM J. Sci. Comput. 28
 * (2006) 2162; its generating vector is from memory), shifted at random by a different amount for each set. Beyond its
 * dimensions the numbers are plain random ones. All come from the indices alone, so that nothing has a state.
 */
const vector = [1, 182667, 469891, 498753, 110745, 446979, 250185, 118627, 245333, 283199, 408519, 391023];

/** Dimensions of the lattice. */
export const DIMENSIONS = vector.length;

/** A random number for three whole numbers: rounds of multiply and shift, as in the finaliser of MurmurHash3. */
export function mixed(a: number, b: number, c: number): number {
  let h = Math.imul(a + 0x9e3779b9, 0x85ebca6b) ^ Math.imul(b + 0x7f4a7c15, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b) ^ Math.imul(c + 0x165667b1, 0x27d4eb2f);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return ((h ^ (h >>> 16)) >>> 0) / 4_294_967_296;
}

/** What a set is shifted by in each dimension of the lattice. */
export function shiftsOf(set: number): Float64Array {
  return Float64Array.from(vector, (_, dimension) => mixed(set, -1, dimension));
}

/** Number `dimension` of point `i` of `count` (a power of two) in a set, whose shifts are given. */
export function lattice(
  shifts: Float64Array,
  set: number,
  i: number,
  count: number,
  dimension: number,
): number {
  if (dimension >= DIMENSIONS) return mixed(set, i, dimension);
  const at = (((vector[dimension] as number) * i) % count) / count + (shifts[dimension] as number);
  return at >= 1 ? at - 1 : at;
}
