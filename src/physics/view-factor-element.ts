/**
 * View factor from a small flat element to a disc that it faces along the disc's axis (Howell B-12): R R / (R R + h h).
 *
 * @param radius - Radius of the disc.
 * @param distance - Distance along the axis, same unit.
 * @returns Share of the light leaving the element that reaches the disc, 0 to 1.
 */
export function elementToCoaxialDisc(radius: number, distance: number): number {
  return (radius * radius) / (radius * radius + distance * distance);
}

/**
 * View factor from a small element to a rectangle in a parallel plane, the element opposite one corner (Howell B-4).
 *
 * @param a - One side, above 0.
 * @param b - The other side, above 0, same unit.
 * @param distance - Distance between the planes, above 0, same unit.
 * @returns Share of the light leaving the element that reaches the rectangle, 0 to 1/4.
 */
export function elementToParallelCorner(a: number, b: number, distance: number): number {
  const ra = Math.sqrt(a * a + distance * distance);
  const rb = Math.sqrt(b * b + distance * distance);
  return ((a / ra) * Math.atan(b / ra) + (b / rb) * Math.atan(a / rb)) / (2 * Math.PI);
}

/**
 * View factor from a small element to a rectangle that stands square to the element's plane, the element opposite a
 * lower corner (Howell B-5).
 *
 * @param a - Side along the line where the two planes meet, above 0.
 * @param b - Height above that line, above 0, same unit.
 * @param distance - Distance of the element from the line, above 0, same unit.
 * @returns Share of the light leaving the element that reaches the rectangle, 0 to 1/4.
 */
export function elementToPerpendicularCorner(a: number, b: number, distance: number): number {
  const slant = Math.sqrt(b * b + distance * distance);
  return (Math.atan(a / distance) - (distance / slant) * Math.atan(a / slant)) / (2 * Math.PI);
}

/**
 * View factor from a small element to the whole of an upright or level rectangle straight in front of it: the four
 * corner pieces of `elementToParallelCorner`.
 *
 * @param width - Width of the rectangle, above 0.
 * @param height - Height of the rectangle, above 0, same unit.
 * @param distance - Distance from its middle along its axis, above 0, same unit.
 * @returns Share of the light leaving the element that reaches the rectangle, 0 to 1.
 */
export function elementToCentredRectangle(width: number, height: number, distance: number): number {
  return 4 * elementToParallelCorner(width / 2, height / 2, distance);
}
