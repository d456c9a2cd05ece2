import type { Recipe } from "./types.js";

/** The model as plain data: without the places where things were written, which are for editors and messages. */
export function withoutOrigins(recipe: Recipe): Recipe {
  return strip(recipe) as Recipe;
}

function strip(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(strip);
  if (value === null || typeof value !== "object") return value;
  // Keys here are names of the vocabulary, never names of the user's.
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, inner]) =>
      key === "origins" || key === "origin" ? [] : [[key, strip(inner)]],
    ),
  );
}
