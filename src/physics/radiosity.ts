/** What the solver found. */
export interface RadiositySolution {
  /** Light leaving each patch in lumens per square metre, in the order of the patches. */
  readonly radiosity: readonly number[];
  /** Greatest change of any patch in the last turn, over the greatest radiosity. */
  readonly residual: number;
  /** Turns taken. */
  readonly turns: number;
}

/** One matt patch of a closed or open room. */
export interface RadiosityPatch {
  /** Area in square metres, above 0. */
  readonly area: number;
  /** Own light in lumens per square metre, 0 or more. */
  readonly exitance: number;
  /** Share of light thrown back, 0 to 1. */
  readonly reflectance: number;
}

/** Turns after which a system counts as one that doesn't settle; usual rooms take 20 to 60. */
const MOST_TURNS = 5000;

/**
 * Light between matt patches, B_i = M_i + rho_i sum_j F_ij B_j, by turns of Gauss and Seidel, each followed by one
 * amount added to all patches so that the light lost equals the light given; with it a white room takes no more turns
 * than a grey one.
 *
 * @param patches - The patches.
 * @param factor - Form factor from patch i to patch j; each row adds up to 1 or less.
 * @param tolerance - Wanted residual; 1e-12 by default.
 * @returns The light leaving each patch, or undefined when nothing is lost and the light never ends.
 */
export function solveRadiosity(
  patches: readonly RadiosityPatch[],
  factor: (i: number, j: number) => number,
  tolerance = 1e-12,
): RadiositySolution | undefined {
  const count = patches.length;
  const factors = new Float64Array(count * count);
  const loss = new Float64Array(count);
  for (let i = 0; i < count; i += 1) {
    let sum = 0;
    for (let j = 0; j < count; j += 1) {
      const each = factor(i, j);
      factors[i * count + j] = each;
      sum += each;
    }
    loss[i] = 1 - patches[i]!.reflectance * sum;
  }
  const radiosity = Float64Array.from(patches, (patch) => patch.exitance);
  for (let turns = 1; turns <= MOST_TURNS; turns += 1) {
    const change = turn(patches, factors, radiosity);
    const missing = balance(patches, factors, loss, radiosity);
    if (missing === undefined) return undefined;
    let greatest = 0;
    for (let i = 0; i < count; i += 1) {
      radiosity[i]! += missing;
      greatest = Math.max(greatest, Math.abs(radiosity[i]!));
    }
    const moved = Math.max(change, Math.abs(missing));
    if (moved <= tolerance * greatest) {
      return { radiosity: Array.from(radiosity), residual: greatest > 0 ? moved / greatest : 0, turns };
    }
  }
  return undefined;
}

/** Brings every patch up to date with the others once; gives the greatest change. */
function turn(patches: readonly RadiosityPatch[], factors: Float64Array, radiosity: Float64Array): number {
  const count = patches.length;
  let change = 0;
  for (let i = 0; i < count; i += 1) {
    const next = patches[i]!.exitance + patches[i]!.reflectance * arriving(factors, radiosity, i);
    change = Math.max(change, Math.abs(next - radiosity[i]!));
    radiosity[i] = next;
  }
  return change;
}

/** The amount that, added to all patches, makes the light lost equal the light given; undefined when nothing is lost. */
function balance(
  patches: readonly RadiosityPatch[],
  factors: Float64Array,
  loss: Float64Array,
  radiosity: Float64Array,
): number | undefined {
  let missing = 0;
  let lost = 0;
  let whole = 0;
  for (let i = 0; i < patches.length; i += 1) {
    const { area, exitance, reflectance } = patches[i]!;
    missing += area * (exitance + reflectance * arriving(factors, radiosity, i) - radiosity[i]!);
    lost += area * loss[i]!;
    whole += area;
  }
  return lost > 1e-12 * whole ? missing / lost : undefined;
}

function arriving(factors: Float64Array, radiosity: Float64Array, i: number): number {
  const count = radiosity.length;
  let sum = 0;
  for (let j = 0; j < count; j += 1) sum += factors[i * count + j]! * radiosity[j]!;
  return sum;
}
