import type { Scene } from "../scene/types.js";
import { reflectanceAssumed, unsaidSurface } from "./rules/reflectance-assumed.rule.js";
import type { Report, ReportWarning } from "./schema/report.js";

/**
 * What was assumed. A surface's reflectance is starred where it was found to move a reading by more than its threshold;
 * everything else where it may.
 *
 * @param found - What the rules have found, silenced or not.
 */
export function reportAssumed(scene: Scene, found: readonly ReportWarning[]): Report["assumed"] {
  return scene.assumed.map((row) => {
    const { what, value } = row;
    const moves = found.some(({ code, about }) => code === reflectanceAssumed.code && about === what);
    return { what, value, matters: unsaidSurface(row) === null ? row.matters : moves };
  });
}
