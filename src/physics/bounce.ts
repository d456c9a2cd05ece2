import { elementToCentredRectangle } from "./view-factor-element.js";

/**
 * Light from an endless matt floor on a small surface: rho E (1 + cos t) / 2.
 *
 * @param floor - Illuminance on the floor in lux.
 * @param reflectance - Reflectance of the floor, 0 to 1.
 * @param tilt - Angle of the surface from facing straight down in radians: 0 faces the floor, pi/2 is upright, pi
 * faces away.
 * @returns Lux.
 */
export function bounceFromFloor(floor: number, reflectance: number, tilt: number): number {
  return (reflectance * floor * (1 + Math.cos(tilt))) / 2;
}

/**
 * Light from an evenly lit matt panel on a small surface that faces its middle squarely: rho E F, with F from four
 * corner pieces (Howell B-4).
 *
 * @param panel - Illuminance on the panel in lux.
 * @param reflectance - Reflectance of the panel, 0 to 1.
 * @param width - Width of the panel in metres, above 0.
 * @param height - Height of the panel in metres, above 0.
 * @param distance - Distance from the panel's middle in metres, above 0.
 * @returns Lux.
 */
export function bounceFromPanel(
  panel: number,
  reflectance: number,
  width: number,
  height: number,
  distance: number,
): number {
  return reflectance * panel * elementToCentredRectangle(width, height, distance);
}
