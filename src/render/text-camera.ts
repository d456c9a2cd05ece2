import type { Report } from "../report/schema/report.js";
import * as n from "./number.js";

/** The camera in words: where it stands and what is set on it. */
export function cameraSentences(camera: NonNullable<Report["camera"]>): readonly string[] {
  const frame = `${n.significant(camera.frame[0], 3)} x ${n.significant(camera.frame[1], 3)} mm`;
  const lens = camera.focal_length === null ? "" : `, ${n.significant(camera.focal_length, 3)} mm lens`;
  const place = `${n.metres(camera.distance)} from the mark, ${n.metres(camera.height)} high, held ${camera.held}, picture area ${frame}${lens}.`;
  const set = [
    camera.aperture === null ? null : `f/${n.significant(camera.aperture, 3).replace(/\.?0+$/, "")}`,
    camera.shutter === null ? null : n.shutterTime(camera.shutter),
    camera.sensitivity === null ? null : `ISO ${n.fixed(camera.sensitivity, 0)}`,
    `white balance ${n.kelvin(camera.balance)}`,
  ].filter((part) => part !== null);
  const more: string[] = [];
  if (camera.focus_distance !== null) {
    const loss = camera.close_focus_loss;
    const costs = loss === null || loss < 0.05 ? "" : `; focusing this near costs ${n.stops(loss)}`;
    more.push(`Focused at ${n.metres(camera.focus_distance)}${costs}.`);
  }
  if (camera.sync !== null) more.push(`Flash sync up to ${n.shutterTime(camera.sync)}.`);
  return [place, `Set: ${set.join(", ")}.`, ...more];
}
