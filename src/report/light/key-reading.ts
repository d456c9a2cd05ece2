import { firstSubject, type Lit, stationOf } from "../plan.js";
import { type Reading, readingAt } from "./reading.js";

/** What the picture is taken to be exposed for: the disc at the first face that looks at the key. */
export function keyReading(lit: Lit): Reading | null {
  const subject = firstSubject(lit.scene);
  const station = subject === null ? null : stationOf(lit.scene, subject, "face");
  const reading = station === null ? null : readingAt(lit, station);
  return reading !== null && reading.exposure > 0 ? reading : null;
}
