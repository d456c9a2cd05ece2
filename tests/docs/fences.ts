/** One fenced example of a page. */
export interface Fence {
  /** The word behind the opening backticks. */
  readonly language: string;
  readonly text: string;
  /** Line of the opening backticks, from 1. */
  readonly line: number;
  /** `key: value` of the HTML comments that stand directly above. */
  readonly marks: ReadonlyMap<string, string>;
  /** Where the text begins and ends in the page. */
  readonly start: number;
  readonly end: number;
}

const OPEN = /^(`{3,}|~{3,})([\w-]*)[^\n]*$/;
const MARK = /^<!-- ([\w-]+)(?:: (.*?))? -->$/;

/** Every fenced example of a Markdown page, in order. */
export function fencesOf(page: string): readonly Fence[] {
  const fences: Fence[] = [];
  let marks = new Map<string, string>();
  let open: {
    readonly closing: string;
    readonly language: string;
    readonly line: number;
    start: number;
  } | null = null;
  let at = 0;
  for (const [index, line] of page.split("\n").entries()) {
    const next = at + line.length + 1;
    if (open !== null) {
      if (line.trimEnd() === open.closing) {
        const text = page.slice(open.start, at);
        fences.push({ language: open.language, text, line: open.line, marks, start: open.start, end: at });
        open = null;
        marks = new Map();
      }
    } else {
      const opening = OPEN.exec(line);
      const mark = MARK.exec(line);
      if (opening !== null) {
        open = { closing: opening[1] ?? "", language: opening[2] ?? "", line: index + 1, start: next };
      } else if (mark !== null) marks.set(mark[1] ?? "", mark[2] ?? "");
      else if (line.trim() !== "") marks = new Map();
    }
    at = next;
  }
  if (open !== null) throw new Error(`the fence of line ${open.line} is never closed`);
  return fences;
}
