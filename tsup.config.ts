import { defineConfig } from "tsup";

/** Packages that the published build carries inside itself, so that installing it brings only zod along. */
const inlined = [/^chevrotain/, /^@chevrotain/, /^lodash-es/, "commander", "picocolors", "fastest-levenshtein", "astronomy-engine"];

export default defineConfig([
  {
    entry: { index: "src/index.ts", physics: "src/physics/index.ts", parser: "src/syntax/parse.ts" },
    format: ["esm", "cjs"],
    dts: { entry: { index: "src/index.ts", physics: "src/physics/index.ts" } },
    splitting: true,
    clean: true,
    target: "node20",
    noExternal: inlined,
    treeshake: false,
  },
  {
    entry: { cli: "src/cli/main.ts" },
    format: ["cjs"],
    target: "node20",
    minify: true,
    noExternal: [/.*/],
    banner: { js: "#!/usr/bin/env node" },
  },
]);
