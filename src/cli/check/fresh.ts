import type { Diagnostic } from "../../diagnostics/diagnostic.js";
import { SETTINGS } from "../kits.js";
import type { Examined } from "./examine.js";

/** Gives the findings of a file that were not said before: what is wrong in a kit is said once for a whole book. */
export function freshFindings(): (examined: Examined) => readonly Diagnostic[] {
  const said = new Set<string>();
  return ({ findings, source }) =>
    findings.filter(({ code, place }) => {
      // What is wrong with a value of `--set` is so for one recipe and not for another.
      const own = place.file === SETTINGS ? source.name : "";
      const key = `${code} ${place.start} ${place.end} ${place.file} ${own}`;
      if (said.has(key)) return false;
      said.add(key);
      return true;
    });
}
