/** One made part of a page: `<!-- made: KIND OF -->`, lines, `<!-- /made -->`. */
export interface Region {
  /** What is made: `quantity`, `block`, `units` ... */
  readonly kind: string;
  /** What it is made of, or empty. */
  readonly of: string;
}

const REGION = /<!-- made: (\S+)(?: (\S+))? -->\n[\s\S]*?<!-- \/made -->/g;

/** The text of a page with every made part made anew; what stands outside the marks is kept to the byte. */
export function remake(page: string, make: (region: Region) => string): string {
  return page.replace(REGION, (_whole, kind: string, of: string | undefined) => {
    const name = of ?? "";
    return `<!-- made: ${kind}${name === "" ? "" : ` ${name}`} -->\n${make({ kind, of: name })}\n<!-- /made -->`;
  });
}

/** The made parts that a page has. */
export function regionsOf(page: string): readonly Region[] {
  return [...page.matchAll(REGION)].map(([, kind = "", of = ""]) => ({ kind, of }));
}

/** A Markdown table; bars and line ends in cells are kept from breaking it. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|").replaceAll("\n", " ")).join(" | ")} |`;
  return [line(head), `|${head.map(() => "---").join("|")}|`, ...rows.map(line)].join("\n");
}
