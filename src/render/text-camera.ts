import type { Report } from "../report/schema/report.js";
import * as n from "./number.js";

/** What the set-up's own sentence does not say of the camera: picture area, white balance, focus, sync, what is brightest. */
export function cameraSentences(camera: NonNullable<Report["camera"]>): readonly string[] {
  const [across, up] = camera.frame;
  const said = [
    `Picture area ${n.shortest(across, 3)} x ${n.shortest(up, 3)} mm, white balance ${n.kelvin(camera.balance)}.`,
  ];
  if (camera.focus_distance !== null) {
    const loss = camera.close_focus_loss;
    const costs = loss === null || loss < 0.05 ? "" : `; focusing this near costs ${n.stops(loss)}`;
    said.push(`Focused at ${n.metres(camera.focus_distance)}${costs}.`);
  }
  if (camera.sync !== null) said.push(`Flash sync up to ${n.shutterTime(camera.sync)}.`);
  const { headroom, of, reflectance } = camera.highlight;
  if (headroom !== null && of !== null && reflectance !== null) {
    const where = headroom < 0 ? "beyond" : "under";
    said.push(
      `Brightest in the picture: ${of} (${n.perCent(reflectance)}), ${n.stops(Math.abs(headroom))} ${where} pure white.`,
    );
  }
  return said;
}
