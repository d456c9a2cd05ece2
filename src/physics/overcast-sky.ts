/**
 * The overcast sky of the CIE: brightest overhead and a third of that at the horizon, the same all round:
 * L(e) = Lz (1 + 2 sin e) / 3 at an elevation e (Moon and Spencer, Illum. Eng. 37 (1942) 707; ISO 15469 / CIE S 011,
 * from memory).
 *
 * @param elevation - Radians, 0 to pi / 2.
 * @returns Luminance as a share of that of the zenith, 1/3 to 1.
 */
export function overcastLuminance(elevation: number): number {
  return (1 + 2 * Math.sin(elevation)) / 3;
}

/** Illuminance of open level ground under that sky for a luminance of 1 at the zenith: 7 pi / 9. */
const LEVEL = (7 * Math.PI) / 9;

/**
 * Light of that sky on a tilted plane over what open level ground gets. The even part of the sky gives
 * pi (1 + cos t) / 2; the part that grows with sin e gives (4/3) ((pi - t) cos t + sin t), both over 3 for a luminance of
 * 1 at the zenith: closed forms of the integrals over the half of the sky that the plane sees. Level ground throws
 * its share back as an even surface to the horizon: ground (1 - cos t) / 2.
 *
 * @param tilt - From level looking up (0) over upright (pi / 2) to looking down (pi), radians.
 * @param ground - Reflectance of the ground, 0 to 1.
 * @returns 1 for a level plane; 0.396 for an upright one over black ground.
 */
export function overcastOnPlane(tilt: number, ground: number): number {
  const cosine = Math.cos(tilt);
  const even = (Math.PI * (1 + cosine)) / 2;
  const risen = (4 / 3) * ((Math.PI - tilt) * cosine + Math.sin(tilt));
  return (even + risen) / 3 / LEVEL + (ground * (1 - cosine)) / 2;
}
