/** How much farther out than the circle the corners of a regular polygon lie that has its area. */
export function areaTrue(corners: number): number {
  const step = (2 * Math.PI) / corners;
  return Math.sqrt(step / Math.sin(step));
}
