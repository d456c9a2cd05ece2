import type { Fix } from "../../src/diagnostics/diagnostic.js";

/** A text after the edits of a fix, from the last to the first. */
export function applyFix(text: string, fix: Fix): string {
  return [...fix.edits]
    .sort((a, b) => b.place.start - a.place.start)
    .reduce(
      (changed, { place, text: by }) => changed.slice(0, place.start) + by + changed.slice(place.end),
      text,
    );
}
