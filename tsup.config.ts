import { spawnSync } from "node:child_process";
import { cpSync, rmSync } from "node:fs";
import { basename, resolve } from "node:path";
import type { Plugin } from "esbuild";
import { defineConfig } from "tsup";
import { starter } from "./src/cli/starter.js";

/** Packages that the published build carries inside itself, so that installing it brings only zod along. */
const inlined = [
  /^chevrotain/,
  /^@chevrotain/,
  /^lodash-es/,
  "fastest-levenshtein",
  "astronomy-engine",
  /^clipper2-ts/,
];

/** Parts of the command, each a file of its own that is loaded when it is needed. */
const chunks: Readonly<Record<string, string>> = {
  run: "src/cli/run.ts",
  language: "src/cli/stages/language.ts",
  light: "src/cli/stages/light.ts",
  quantities: "src/cli/stages/quantities.ts",
  crew: "src/cli/stages/crew.ts",
  pages: "src/cli/stages/pages.ts",
  draw: "src/cli/stages/draw.ts",
};

/** Turns every `import()` of the command into loading the chunk of that name, with its compiled code. */
const loadChunks: Plugin = {
  name: "load-chunks",
  setup(build) {
    build.onResolve({ filter: /^\./ }, ({ kind, path }) => {
      if (kind !== "dynamic-import") return undefined;
      const name = basename(path, ".js");
      if (chunks[name] === undefined) return { errors: [{ text: `no chunk for import("${path}")` }] };
      return { path: name, namespace: "chunk" };
    });
    build.onLoad({ filter: /.*/, namespace: "chunk" }, ({ path }) => ({
      contents: `module.exports = require("./src/cli/load-chunk.ts").loadChunk(${JSON.stringify(path)});`,
      resolveDir: resolve("."),
    }));
  },
};

/** Runs two commands that between them load every chunk, and leaves the compiled code beside the chunks. */
function compileChunks(): void {
  const maker = resolve("tests/generate/code-cache.cjs");
  const program = resolve("dist/cli.cjs");
  const commands: readonly (readonly string[])[] = [["calc"], ["report", "-"]];
  for (const args of commands) {
    const done = spawnSync(process.execPath, [maker, program, ...args], { input: starter, encoding: "utf8" });
    if (done.status !== 0) throw new Error(`halfshade ${args.join(" ")} failed: ${done.stderr}`);
  }
}

// Both builds write to the same folder at the same time, so neither of them may empty it.
rmSync("dist", { recursive: true, force: true });

export default defineConfig([
  {
    // The sun is an entry so that it becomes a file of its own: who bundles another formula gets nothing of it.
    entry: {
      index: "src/index.ts",
      physics: "src/physics/index.ts",
      markdown: "src/markdown/index.ts",
      parser: "src/syntax/parse.ts",
      sun: "src/physics/sun-position.ts",
    },
    format: ["esm", "cjs"],
    dts: {
      entry: { index: "src/index.ts", physics: "src/physics/index.ts", markdown: "src/markdown/index.ts" },
    },
    splitting: true,
    clean: false,
    target: "node20",
    noExternal: inlined,
    treeshake: false,
  },
  {
    entry: {
      cli: "src/cli/main.ts",
      "cli-worker": "src/cli/worker.ts",
      ...Object.fromEntries(Object.entries(chunks).map(([name, path]) => [`cli-${name}`, path])),
    },
    format: ["cjs"],
    target: "node20",
    platform: "node",
    minify: true,
    splitting: false,
    clean: false,
    noExternal: [/^(?!@resvg)/],
    external: ["@resvg/resvg-js"],
    esbuildPlugins: [loadChunks],
    esbuildOptions(options) {
      options.charset = "ascii";
      options.banner = { js: '"use strict";' };
    },
    onSuccess: async () => {
      cpSync("src/render/font", "dist/font", { recursive: true });
      compileChunks();
    },
  },
]);
