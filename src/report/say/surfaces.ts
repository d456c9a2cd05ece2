import { list } from "./number.js";

/** What a surface belongs to, by its own name: `back` for `back.left` and `roll` for `roll.3`. */
export function ownerOf(surface: string): string {
  return surface.split(".")[0] as string;
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
