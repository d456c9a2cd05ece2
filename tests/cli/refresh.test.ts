import { mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { recipe } from "../markdown/pages.js";
import { halfshade } from "./fake-machine.js";

const folder = mkdtempSync(join(tmpdir(), "halfshade-refresh-"));
afterAll(() => rmSync(folder, { recursive: true }));
const write = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};
const textOf = (file: string): string => readFileSync(file, "utf8");
write("loom.light", recipe);
write("broken.light", recipe.replace("1.70 m", "170"));
const block = (order: string): string => `<!-- halfshade ${order} -->\r\nold\r\n<!-- /halfshade -->\r\n`;
const table = block('table "Walk the lamp in" of "loom.light"');

describe("halfshade refresh", () => {
  test("writes the blocks of a page, once", async () => {
    const page = write("once.md", `a\r\n${table}b\n${table}`);
    expect(await halfshade(["refresh", page])).toEqual({
      exit: 0,
      out: `${page}: 2 of 2 blocks refreshed.\n`,
      err: "",
    });
    const text = textOf(page);
    expect(text.startsWith("a\r\n<!-- halfshade table")).toBe(true);
    expect(text).toContain("| 2 m | 17.1 |\r\n");
    const { mtimeMs } = statSync(page);
    expect(await halfshade(["refresh", page])).toEqual({ exit: 0, out: "", err: "" });
    expect(statSync(page).mtimeMs).toBe(mtimeMs);
    expect(textOf(page)).toBe(text);
  });

  test("--check says which blocks are stale, changes nothing and exits with 1", async () => {
    const page = write("check.md", table);
    await halfshade(["refresh", page]);
    expect(await halfshade(["refresh", "--check", page])).toEqual({ exit: 0, out: "", err: "" });
    const text = `${textOf(page)}${block('headline of "loom.light"')}`;
    writeFileSync(page, text);
    const line = text.slice(0, text.indexOf("<!-- halfshade headline")).split("\n").length;
    expect(await halfshade(["refresh", "--check", page])).toEqual({
      exit: 1,
      out: `${page}:${line}: stale: headline of "loom.light"\n`,
      err: "",
    });
    expect(textOf(page)).toBe(text);
  });

  test("a page with anything wrong in it is not written", async () => {
    const text = `${table}${block('report of "broken.light"')}`;
    const page = write("wrong.md", text);
    const ran = await halfshade(["refresh", page]);
    expect(ran).toMatchObject({ exit: 1, out: "" });
    expect(ran.err).toContain(`${page}:4: The recipe has mistakes.`);
    expect(ran.err).toContain("broken.light:4:19  error");
    expect(ran.err).toContain(`${page}: left as it is.`);
    expect(textOf(page)).toBe(text);
  });

  test("files outside the root are not read, also through links", async () => {
    mkdirSync(join(folder, "inner"), { recursive: true });
    symlinkSync(join(folder, "loom.light"), join(folder, "inner/link.light"));
    for (const file of ["../loom.light", "link.light"]) {
      const page = write("inner/out.md", block(`headline of "${file}"`));
      const ran = await halfshade(["refresh", page, "--root", join(folder, "inner")]);
      expect(ran.exit).toBe(1);
      expect(ran.err).toMatch(/leaves the project folder: /);
    }
  });

  test("a page that is not there, no page, standard input, a page without blocks", async () => {
    expect((await halfshade(["refresh", join(folder, "none.md")])).exit).toBe(2);
    expect((await halfshade(["refresh"])).exit).toBe(2);
    expect((await halfshade(["refresh", "-"], { input: table })).err).toMatch(/cannot be written back/);
    const bare = await halfshade(["refresh", write("bare.md", "text\n")]);
    expect(bare).toMatchObject({ exit: 0, out: "" });
    expect(bare.err).toMatch(/no marked block/);
  });
});
