import type { Fix } from "./diagnostic.js";
import type { TextOf } from "./print-place.js";

/**
 * The lines that a fix leaves where it changes a file, or an empty list when the fix has no edits in a text at hand.
 * Edits are applied from the last to the first; of two that overlap the first stands.
 */
export function linesAfter(fix: Fix, textOf: TextOf): readonly string[] {
  const first = fix.edits[0];
  const text = first === undefined ? null : textOf(first.place.file);
  if (first === undefined || text === null) return [];
  const edits = fix.edits
    .filter((edit) => edit.place.file === first.place.file)
    .filter(
      (edit) => edit.place.start >= 0 && edit.place.end <= text.length && edit.place.start <= edit.place.end,
    )
    .sort((a, b) => a.place.start - b.place.start);
  let changed = "";
  let read = 0;
  let low = -1;
  let high = 0;
  for (const edit of edits) {
    if (edit.place.start < read) continue;
    changed += text.slice(read, edit.place.start);
    if (low < 0) low = changed.length;
    changed += edit.text;
    high = changed.length;
    read = edit.place.end;
  }
  if (low < 0) return [];
  changed += text.slice(read);
  const isEnd = (at: number): boolean => changed[at] === "\n" || changed[at] === "\r";
  while (low > 0 && !isEnd(low - 1)) low--;
  while (high < changed.length && !isEnd(high)) high++;
  return changed.slice(low, high).split(/\r\n|\n|\r/);
}
