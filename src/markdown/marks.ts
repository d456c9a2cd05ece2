/** A block of a page between its marks. */
export interface MarkedBlock {
  /** Line of the opening mark, from 1. */
  readonly line: number;
  /** What the mark asks for. */
  readonly order: string;
  /** Offsets of what stands between the marks: from the line behind the first to that of the second. */
  readonly start: number;
  readonly end: number;
  /** How lines end at the opening mark. */
  readonly lineEnd: string;
}

/** The marks of a page: its blocks, and what is wrong with marks, by line. */
export interface Marks {
  readonly blocks: readonly MarkedBlock[];
  readonly problems: readonly { readonly line: number; readonly message: string }[];
}

const mark = /^ {0,3}<!--[ \t]*(\/?)halfshade(?![\w-])(.*)$/;
const fence = /^ {0,3}(`{3,}|~{3,})(.*)$/;

interface Opened {
  readonly line: number;
  readonly order: string;
  readonly start: number;
  readonly lineEnd: string;
}

/**
 * Finds the blocks between `<!-- halfshade ORDER -->` and `<!-- /halfshade -->`, each mark on a line of its own. Marks
 * inside fenced code are examples and are left alone.
 */
export function marksOf(page: string): Marks {
  const blocks: MarkedBlock[] = [];
  const problems: { readonly line: number; readonly message: string }[] = [];
  let fenced: string | null = null;
  let open: Opened | null = null;
  let number = 0;
  for (const { text, start, end, lineEnd } of linesOf(page)) {
    number += 1;
    const fencing = fence.exec(text);
    if (fenced !== null) {
      const [sign = "", rest = ""] = [fencing?.[1], fencing?.[2]];
      if (sign.startsWith(fenced) && rest.trim() === "") fenced = null;
      continue;
    }
    if (fencing !== null && !(fencing[1]?.startsWith("`") && fencing[2]?.includes("`"))) {
      fenced = fencing[1] ?? "";
      continue;
    }
    const found = mark.exec(text);
    if (found === null) continue;
    const inner = /^(.*)-->[ \t]*$/.exec(found[2] ?? "")?.[1];
    if (inner === undefined || inner.includes("-->")) {
      problems.push({ line: number, message: "The mark does not end in `-->` on its own line." });
    } else if (found[1] === "") {
      if (open !== null) problems.push(unclosed(open, `another begins at line ${number}`));
      open = { line: number, order: inner, start: end, lineEnd };
    } else if (open === null) {
      problems.push({
        line: number,
        message: "`<!-- /halfshade -->` closes a block, and none is open here.",
      });
    } else {
      blocks.push({ ...open, end: start });
      open = null;
    }
  }
  if (open !== null) problems.push(unclosed(open, "the page ends"));
  return { blocks, problems: problems.sort((a, b) => a.line - b.line) };
}

const unclosed = ({ line }: Opened, before: string): { readonly line: number; readonly message: string } => ({
  line,
  message: `The block is not closed before ${before}: write \`<!-- /halfshade -->\` behind it.`,
});

interface Line {
  readonly text: string;
  readonly start: number;
  /** Behind the line's end. */
  readonly end: number;
  readonly lineEnd: string;
}

/** The lines of a page with their offsets; a byte order mark belongs to no line. */
function* linesOf(page: string): Generator<Line, void> {
  let start = page.startsWith("\ufeff") ? 1 : 0;
  const ends = /\r\n|\n|\r/g;
  while (start < page.length) {
    ends.lastIndex = start;
    const found = ends.exec(page);
    const text = page.slice(start, found?.index ?? page.length);
    const lineEnd = found?.[0] ?? "";
    const end = start + text.length + lineEnd.length;
    yield { text, start, end, lineEnd };
    start = end;
  }
}
