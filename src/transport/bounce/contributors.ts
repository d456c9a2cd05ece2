import type { ShadedSource } from "../hiding/shaded.js";
import type { KeptSet } from "./kept-set.js";
import type { Contributor } from "./types.js";

/** The surfaces that give a station bounced light of a source, the greatest first. */
export function contributors(
  _kept: KeptSet,
  _source: ShadedSource,
  _station: number,
): readonly Contributor[] {
  return [];
}
