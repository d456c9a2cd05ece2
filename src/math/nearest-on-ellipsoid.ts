/**
 * The point of an ellipsoid's surface that is nearest to a point inside, in the frame of its axes. Of points that are as
 * near, one of them.
 *
 * From the multiplier t of the least distance: every part is e^2 y / (t + e^2), and the squares of e y / (t + e^2) add up
 * to 1 (Eberly, Distance from a Point to an Ellipse, an Ellipsoid, or a Hyperellipsoid, 2013; from memory).
 *
 * @param half - Half axes, above 0.
 * @param inside - The point, in or on the ellipsoid.
 */
export function nearestOnEllipsoid(
  half: readonly [number, number, number],
  inside: readonly [number, number, number],
): readonly [number, number, number] {
  const least = Math.min(...half);
  // A point in a plane of symmetry is taken as a hair beside it: it has two nearest points, or one of them is as good.
  const parts = inside.map((part, i) => {
    const hair = 1e-12 * (half[i] as number);
    return Math.abs(part) > hair ? part : hair;
  });
  // Counted from minus the square of the least half axis, so that no small number comes of two great ones.
  const more = half.map((e) => (e - least) * (e + least));
  const sumAt = (s: number): number => {
    let sum = 0;
    for (let i = 0; i < 3; i++) {
      const share = ((half[i] as number) * (parts[i] as number)) / (s + (more[i] as number));
      sum += share * share;
    }
    return sum;
  };
  let low = 0;
  let high = least * least;
  for (let i = 0; i < 3; i++)
    low = Math.max(low, (half[i] as number) * Math.abs(parts[i] as number) - (more[i] as number));
  for (let i = 0; i < 200 && high > low; i++) {
    const middle = (low + high) / 2;
    if (middle === low || middle === high) break;
    if (sumAt(middle) > 1) low = middle;
    else high = middle;
  }
  const s = (low + high) / 2;
  const [x, y, z] = half.map((e, i) => (e * e * (parts[i] as number)) / (s + (more[i] as number)));
  return [x ?? 0, y ?? 0, z ?? 0];
}
