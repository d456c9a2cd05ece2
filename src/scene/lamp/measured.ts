import type { LightModel } from "../../model/types.js";
import type { BeamValue } from "../../model/values.js";
import { beamTable } from "../../physics/beam-table.js";
import { assume, placeOfBlock, report, type Site } from "../site.js";
import type { Source } from "../types.js";

/** Share of a file's light that may go behind the opening without a word. */
const SLIGHT = 0.01;

/** The beam that a measured file gives; what goes behind the opening is left out, and that is said. */
export function measuredBeam(
  site: Site,
  name: string,
  light: LightModel,
  { photometry, file }: Extract<BeamValue, { kind: "measured" }>,
): Source["beam"] {
  const table = beamTable(photometry);
  if (table === null) {
    site.place = placeOfBlock(light.origins, "beam");
    report(site, "scene.incomplete", { name, what: "light along its axis in the file of its beam" });
    return { kind: "lambertian" };
  }
  if (table.behind > SLIGHT) {
    const share = Math.round(table.behind * 100);
    assume(site, `light of ${name} behind its opening`, `left out, ${share} % of what ${file} gives`, true);
  }
  return { kind: "table", file, table };
}
