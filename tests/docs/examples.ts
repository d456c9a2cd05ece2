import { type Fence, fencesOf } from "./fences.js";
import { allPages } from "./pages.js";

/** One example of the pages that a test runs. */
export interface Example {
  /** From 1, in the order of the pages and of the examples on each. */
  readonly number: number;
  readonly page: string;
  readonly fence: Fence;
  /** The heading above it; of a page without headings its path. */
  readonly heading: string;
  /** What it is called: its own title, else what it asks for, else its first line. */
  readonly title: string;
}

/** The languages of examples, which `recipes`, `console`, `physics` and `samples` run. */
export const RUN = ["halfshade", "console", "calc", "ts"] as const;

/** Every example that is run, numbered through. */
export function examples(): readonly Example[] {
  const rows = allPages().flatMap((page) =>
    fencesOf(page.text)
      .filter(({ language }) => (RUN as readonly string[]).includes(language))
      .map((fence) => ({
        page: page.path,
        fence,
        heading: headingAbove(page.text, fence.start) ?? page.path,
        title: titleOf(fence),
      })),
  );
  return rows.map((row, index) => ({ number: index + 1, ...row }));
}

function headingAbove(page: string, start: number): string | null {
  const heads = [...page.slice(0, start).matchAll(/^#{1,6} (.+)$/gm)];
  return heads[heads.length - 1]?.[1] ?? null;
}

function titleOf({ text, language }: Fence): string {
  const lines = text.split("\n").filter((line) => line.trim() !== "");
  const first = lines[0] ?? "";
  if (language !== "halfshade") return first.replace(/^\$ /, "");
  const named = /^(?:recipe|kit|session|table|variant) "[^"]*"/m.exec(text)?.[0];
  const asked = lines.find((line) => /^expect /.test(line));
  return named ?? asked ?? first;
}
