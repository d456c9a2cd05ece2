/** What the files of one folder of `src` may import besides their own folder. */
export interface LayerRow {
  /** Folders of `src`; `/name` is the file `src/name.ts` at the top. */
  readonly imports: readonly string[];
  /** Packages, by name. */
  readonly packages: readonly string[];
  /** Whether `node:` modules are allowed. */
  readonly node?: true;
}

const row = (imports: string, packages = ""): LayerRow => ({
  imports: imports.split(" ").filter((word) => word !== ""),
  packages: packages.split(" ").filter((word) => word !== ""),
});

/** The layers, one row for every folder of `src`. Change a row with a reason in `docs/decisions/`. */
export const layers: ReadonlyMap<string, LayerRow> = new Map<string, LayerRow>([
  ["core", row("")],
  ["diagnostics", row("core")],
  ["units", row("core")],
  ["math", row("core")],
  ["vocabulary", row("core units", "zod")],
  ["text", row("core diagnostics vocabulary", "chevrotain")],
  ["syntax", row("core diagnostics vocabulary text", "chevrotain")],
  ["format", row("core vocabulary text syntax diagnostics", "chevrotain")],
  ["model", row("core units vocabulary photometry", "zod")],
  ["check", row("core diagnostics units vocabulary syntax format model photometry", "fastest-levenshtein")],
  ["scene", row("core diagnostics math units model vocabulary physics")],
  ["physics", row("core math units photometry", "astronomy-engine")],
  ["transport", row("core math physics scene")],
  ["report", row("core diagnostics math units vocabulary model scene physics transport", "zod clipper2-ts")],
  ["solve", row("core diagnostics units model scene physics transport report")],
  ["tables", row("core diagnostics units model scene physics transport report")],
  ["photometry", row("core math")],
  ["quantities", row("core units physics photometry", "fastest-levenshtein")],
  ["preview", row("core math scene physics transport report")],
  ["render", row("core diagnostics units report tables", "hast-util-to-html hastscript")],
  ["markdown", row("/index")],
  ["testing", row("/index")],
  ["editor", row("core diagnostics units vocabulary text syntax format check model /pipeline")],
  ["node", { ...row("core diagnostics /index", "@resvg/resvg-js fast-png pdfkit"), node: true }],
  [
    "cli",
    {
      ...row(
        "core diagnostics units vocabulary text syntax format model check scene transport report tables render quantities photometry preview editor markdown node /index /compile /pipeline /set-ups /figures",
        "fastest-levenshtein",
      ),
      node: true,
    },
  ],
]);

/** Files at the top of `src` join the stages and may import every folder except the two that know the machine. */
export const topFiles: readonly string[] = [
  "index.ts",
  "pipeline.ts",
  "set-ups.ts",
  "figures.ts",
  "compile.ts",
  "tagged.ts",
];
