import { execFileSync } from "node:child_process";
import {
  existsSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { afterAll, describe, expect, test } from "vitest";
import { projectRoot } from "./source-tree.js";

/** These tests are about the built package, which `npm test` makes before them. */
const built = existsSync(join(projectRoot, "dist/cli.cjs"));
const folder = mkdtempSync(join(tmpdir(), "halfshade-package-"));
afterAll(() => rmSync(folder, { recursive: true }));
if (built) {
  // The project by its own name, and nothing else: what a user's folder looks like.
  execFileSync("mkdir", ["-p", join(folder, "node_modules")]);
  symlinkSync(projectRoot, join(folder, "node_modules/halfshade"));
  writeFileSync(join(folder, "package.json"), '{"type":"module"}');
}

const node = (...args: readonly string[]): string =>
  execFileSync(process.execPath, args, { cwd: folder, encoding: "utf8" });
const recipe = 'halfshade 1\nrecipe "x"\n';

describe.skipIf(!built)("the built package", () => {
  test("is imported and required by its own name, with the reviewed names", () => {
    for (const [entry, list] of [
      ["halfshade", "index"],
      ["halfshade/markdown", "markdown"],
    ] as const) {
      const names = readFileSync(join(projectRoot, `tests/arch/public-names/${list}.txt`), "utf8")
        .split("\n")
        .filter((line) => line !== "" && !line.startsWith("#") && !line.startsWith("type "));
      const print = "process.stdout.write(JSON.stringify(Object.keys(h).sort()))";
      const imported = `import * as h from "${entry}"; ${print}`;
      const required = `const h = require("${entry}"); ${print}`;
      expect(JSON.parse(node("--input-type=module", "-e", imported))).toEqual(names);
      expect(JSON.parse(node("--input-type=commonjs", "-e", required))).toEqual(names);
    }
  });

  test("works: a text is compiled, from either kind of module", () => {
    const use = `process.stdout.write(String(h.compile({ name: "x", text: ${JSON.stringify(recipe)} }).recipe.title))`;
    expect(node("--input-type=module", "-e", `import * as h from "halfshade"; ${use}`)).toBe("x");
    expect(node("--input-type=commonjs", "-e", `const h = require("halfshade"); ${use}`)).toBe("x");
  });

  test("has types that a strict program of a user accepts, for either kind of module", () => {
    const text =
      'import { compile, type Compiled } from "halfshade";\nexport const c: Compiled = compile({ name: "x", text: "" });\n' +
      'import { refreshPage, type Refreshed } from "halfshade/markdown";\nexport const r: Refreshed = refreshPage("");\n';
    const wrong =
      'import { compile } from "halfshade";\nexport const c: number = compile({ name: "x", text: "" });\n';
    for (const [name, body] of [
      ["a.mts", text],
      ["b.cts", text],
      ["c.mts", wrong],
    ] as const) {
      writeFileSync(join(folder, name), body);
    }
    const tsc = join(projectRoot, "node_modules/typescript/bin/tsc");
    const flags = ["--noEmit", "--strict", "--module", "nodenext", "--target", "es2022", "--skipLibCheck"];
    expect(node(tsc, ...flags, "a.mts", "b.cts")).toBe("");
    expect(() => node(tsc, ...flags, "c.mts")).toThrow();
  });

  test("one formula of halfshade/physics is less than 2 kB of a user's bundle", async () => {
    const bundle = async (from: string): Promise<number> => {
      const result = await build({
        stdin: { contents: from, resolveDir: folder },
        bundle: true,
        minify: true,
        format: "esm",
        platform: "browser",
        write: false,
        logLevel: "silent",
      });
      return result.outputFiles[0]?.contents.length ?? 0;
    };
    for (const name of ["miredShift", "stopsBetween"]) {
      const one = await bundle(`export { ${name} } from "halfshade/physics";`);
      expect(one).toBeGreaterThan(20);
      expect(one).toBeLessThan(2048);
    }
    expect(await bundle('export * from "halfshade/physics";')).toBeGreaterThan(20_000);
  });

  test("needs nothing of Node in a browser", async () => {
    for (const entry of ["halfshade", "halfshade/physics", "halfshade/markdown"]) {
      const result = await build({
        stdin: { contents: `export * from "${entry}";`, resolveDir: folder },
        bundle: true,
        format: "esm",
        platform: "browser",
        write: false,
        logLevel: "silent",
      });
      expect(result.errors).toEqual([]);
      expect(result.outputFiles[0]?.text).not.toMatch(/require\("(node:)?(fs|path|os|vm)"\)/);
    }
  });

  test("has the schemas and the grammar at their addresses", () => {
    for (const name of [
      "schema/report.json",
      "schema/recipe.json",
      "schema/table.json",
      "schema/comparison.json",
      "grammar/halfshade.ebnf",
      "package.json",
    ]) {
      const found = node(
        "--input-type=commonjs",
        "-e",
        `process.stdout.write(require.resolve("halfshade/${name}"))`,
      );
      expect(existsSync(found)).toBe(true);
    }
  });

  test("packs what it should and no more", () => {
    const out = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
      cwd: projectRoot,
      encoding: "utf8",
    });
    const files: readonly string[] = JSON.parse(out)[0].files.map((file: { path: string }) => file.path);
    expect(files).toContain("dist/cli.cjs");
    expect(files).toContain("THIRD-PARTY-NOTICES.md");
    for (const file of files) {
      expect(file).toMatch(/^(dist|grammar)\/|^(package\.json|README\.md|LICENSE|THIRD-PARTY-NOTICES\.md)$/);
    }
  });

  test("has no path of the machine it was built on", () => {
    for (const name of readdirSync(join(projectRoot, "dist"), { recursive: true }).map(String)) {
      if (!/\.[a-z]+$/.test(name)) continue;
      expect(readFileSync(join(projectRoot, "dist", name), "latin1").includes(projectRoot)).toBe(false);
    }
  });

  test("has no script that runs when it is installed", () => {
    const own = JSON.parse(readFileSync(join(projectRoot, "package.json"), "utf8"));
    for (const name of ["preinstall", "install", "postinstall", "prepare"])
      expect(own.scripts[name]).toBeUndefined();
    expect(Object.keys(own.dependencies)).toEqual(["exifreader", "zod"]);
    expect(Object.keys(own.optionalDependencies)).toEqual(["@resvg/resvg-js", "pdfkit"]);
  });
});
