/** The plane in which the light swings: across the plane of incidence (s), in it (p), or evenly mixed (u). */
export type Polarisation = "s" | "p" | "u";

/**
 * Share of light that a smooth clear surface mirrors, by Fresnel's equations (Born and Wolf, Principles of Optics).
 *
 * @param index - Refractive index behind the surface over that in front of it, above 0; below 1 for light on its way
 * out of glass, where the result reaches 1 (total reflection).
 * @param incidence - Angle from the surface's normal in radians, 0 to pi/2.
 * @param polarisation - `s`, `p` or `u`.
 * @returns 0 to 1.
 */
export function fresnelReflectance(index: number, incidence: number, polarisation: Polarisation): number {
  const cosine = Math.max(0, Math.cos(incidence));
  const sine = Math.sin(incidence) / index;
  if (sine >= 1) return 1;
  const inside = Math.sqrt(1 - sine * sine);
  const across = (cosine - index * inside) / (cosine + index * inside);
  const along = (index * cosine - inside) / (index * cosine + inside);
  if (polarisation === "s") return across * across;
  if (polarisation === "p") return along * along;
  return (across * across + along * along) / 2;
}

/**
 * The angle of incidence at which no p-polarised light is mirrored: atan(n) (Brewster).
 *
 * @param index - Refractive index behind the surface over that in front of it, above 0.
 * @returns Angle from the normal in radians.
 */
export function brewsterAngle(index: number): number {
  return Math.atan(index);
}
