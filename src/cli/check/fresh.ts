import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import type { Examined } from "./examine.js";

/** Gives the findings of a file that were not said before: what is wrong in a kit is said once for a whole book. */
export function freshFindings(): (examined: Examined) => readonly Diagnostic[] {
  const said = new Set<string>();
  return ({ findings }) =>
    findings.filter(({ code, place }) => {
      const key = `${code} ${place.start} ${place.end} ${place.file}`;
      if (said.has(key)) return false;
      said.add(key);
      return true;
    });
}
