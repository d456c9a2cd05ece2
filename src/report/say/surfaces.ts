import { wallWords } from "../../scene/wall-places.js";
import { list } from "./number.js";

/**
 * What a surface or a station on one belongs to, by its own name: `back` for `back.left`, `roll` for `roll.3`, and the
 * name of the wall, `wall back`, for `wall_back.left`.
 */
export function ownerOf(surface: string): string {
  const owner = surface.split(".")[0] as string;
  return wallWords.get(owner) ?? owner;
}

/** The piece of the set or wall of a station where a sentence starts with it: `back`, `The back wall`. */
export function startWithOwner(station: string): string {
  const owner = ownerOf(station);
  const words = sayOwner(owner);
  return words === owner ? words : `T${words.slice(1)}`;
}

/** A surface in words: `the floor`, `the left wall`, `the back wall`; a piece of the set by its name. */
export function sayOwner(owner: string): string {
  if (owner === "floor" || owner === "ceiling" || owner === "person") return `the ${owner}`;
  const wall = /^wall (left|right|front|back)$/.exec(owner);
  return wall === null ? owner : `the ${wall[1]} wall`;
}

/** Several surfaces in words: `the floor and back`. */
export function sayOwners(owners: readonly string[]): string {
  return list(owners.map(sayOwner));
}
