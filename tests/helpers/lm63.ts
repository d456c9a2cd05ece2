/** The text of an LM-63 file of type C with one half plane, for an intensity by the angle from the axis in degrees. */
export function roundFile(intensity: (away: number) => number, step = 1, until = 90): string {
  const angles = Array.from({ length: Math.round(until / step) + 1 }, (_, i) => i * step);
  return [
    "IESNA:LM-63-2002",
    "[TEST] made up",
    "TILT=NONE",
    `1 -1 1.0 ${angles.length} 1 1 2 0.3 0.3 0`,
    "1.0 1.0 100",
    angles.join("\n"),
    "0",
    angles.map((angle) => Math.max(0, intensity(angle)).toPrecision(12)).join("\n"),
  ].join("\n");
}

/** The same of type B on a full grid, by the horizontal and the vertical angle in degrees. */
export function gridFile(intensity: (horizontal: number, vertical: number) => number, step = 5): string {
  const angles = Array.from({ length: Math.round(180 / step) + 1 }, (_, i) => i * step - 90);
  return [
    "IESNA:LM-63-2002",
    "TILT=NONE",
    `1 -1 1.0 ${angles.length} ${angles.length} 2 2 0.3 0.3 0`,
    "1.0 1.0 100",
    angles.join(" "),
    angles.join(" "),
    ...angles.map((h) => angles.map((v) => intensity(h, v).toPrecision(12)).join(" ")),
  ].join("\n");
}
