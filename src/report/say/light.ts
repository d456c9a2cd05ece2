import type { Source } from "../../scene/types.js";
import { sayOwner } from "./surfaces.js";

/** A light as it is seen, in words: its name, or `the patch of the ceiling that key lights`. */
export function sayLight({ name, patch }: Source): string {
  return patch === undefined ? name : `the patch of ${sayOwner(patch.surface)} that ${name} lights`;
}

/** The same where a sentence starts with it. */
export function startWithLight(source: Source): string {
  const words = sayLight(source);
  return source.patch === undefined ? words : `T${words.slice(1)}`;
}

/** The head of a light where a sentence starts with it: its name, or `The head of key` for one behind a cloth. */
export function startWithHead({ name, spillOf }: Source): string {
  return spillOf === undefined ? name : `The head of ${spillOf}`;
}
