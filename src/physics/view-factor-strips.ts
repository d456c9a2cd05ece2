/**
 * View factor of two endless strips that share an edge, by crossed strings (Hottel; Howell C-5a):
 * F = (1 + r - sqrt(1 + r r - 2 r cos(angle))) / 2 with r = to / from.
 *
 * @param from - Width of the strip that sends, above 0.
 * @param to - Width of the strip that receives, above 0, same unit.
 * @param angle - Angle between their lit faces in radians, 0 to pi.
 * @returns Share of the light leaving the first that reaches the second, 0 to 1.
 */
export function viewFactorWedge(from: number, to: number, angle: number): number {
  const r = to / from;
  const half = Math.sin(angle / 2);
  return (1 + r - Math.sqrt((1 - r) * (1 - r) + 4 * r * half * half)) / 2;
}

/**
 * View factor of two equal endless strips that face each other squarely, by crossed strings (Howell C-1):
 * sqrt(1 + (h/w)^2) - h/w.
 *
 * @param width - Width of each, above 0.
 * @param gap - Distance between them, above 0, same unit.
 * @returns Share of the light leaving one that reaches the other, 0 to 1.
 */
export function viewFactorStrips(width: number, gap: number): number {
  const ratio = gap / width;
  return 1 / (Math.sqrt(1 + ratio * ratio) + ratio);
}
