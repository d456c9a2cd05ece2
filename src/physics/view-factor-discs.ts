/**
 * View factor of two discs on one axis that face each other (Howell C-41).
 *
 * @param from - Radius of the disc that sends, above 0.
 * @param to - Radius of the disc that receives, above 0, same unit.
 * @param gap - Distance between them, above 0, same unit.
 * @returns Share of the light leaving the first that reaches the second, 0 to 1.
 */
export function viewFactorCoaxialDiscs(from: number, to: number, gap: number): number {
  const r1 = from / gap;
  const r2 = to / gap;
  const sum = 1 + (1 + r2 * r2) / (r1 * r1);
  const product = (2 * r2) / r1;
  return (product * product) / (2 * (sum + Math.sqrt((sum - product) * (sum + product))));
}

/**
 * View factor of a sphere to a disc on whose axis it stands: (1 - 1 / sqrt(1 + (r/h)^2)) / 2, whatever the sphere's
 * radius (Feingold and Gupta 1970; Howell's catalogue).
 *
 * @param radius - Radius of the disc, above 0.
 * @param distance - Distance from the sphere's centre to the disc, above 0 and above the sphere's radius, same unit.
 * @returns Share of the light leaving the sphere that reaches the disc, 0 to 1/2.
 */
export function viewFactorSphereToDisc(radius: number, distance: number): number {
  const square = (radius * radius) / (distance * distance);
  const root = Math.sqrt(1 + square);
  return square / (2 * root * (root + 1));
}
