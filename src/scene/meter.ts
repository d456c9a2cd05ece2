import { assume, type Site } from "./site.js";
import type { Scene } from "./types.js";

/** The meter's constants: C of a flat receptor 250, C of a dome 340, K 12.5 unless the recipe says otherwise. */
export function meterOf(site: Site): Scene["meter"] {
  const meter = site.recipe.meter;
  if (meter?.flat_constant === undefined) assume(site, "C of the flat receptor", "250", true);
  if (meter?.dome_constant === undefined) assume(site, "C of the dome", "340", true);
  return {
    flat: meter?.flat_constant?.value ?? 250,
    dome: meter?.dome_constant?.value ?? 340,
    reflected: meter?.reflected_constant?.value ?? 12.5,
  };
}
