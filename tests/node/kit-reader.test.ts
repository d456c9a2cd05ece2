import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, realpathSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { isInside, type KitDisk, kitDisk, kitReader } from "../../src/node/kit-reader.js";
import { projectRoot } from "../../src/node/root.js";

const top = realpathSync(mkdtempSync(join(tmpdir(), "halfshade-kits-")));
afterAll(() => rmSync(top, { recursive: true }));

const at = (path: string): string => join(top, path);
const kit = 'halfshade 1\nkit "Shed"\n';
const secret = 'halfshade 1\nkit "Secret"\n';

beforeAll(() => {
  for (const folder of ["project/book", "project/kits", "project/folder.light", "outside", "project-b"])
    mkdirSync(at(folder), { recursive: true });
  writeFileSync(at("project/book/a.light"), kit);
  writeFileSync(at("project/kits/kit.light"), kit);
  writeFileSync(at("outside/kit.light"), secret);
  writeFileSync(at("project-b/kit.light"), secret);
  writeFileSync(at("project/big.light"), "#".repeat(300_000));
  writeFileSync(at("project/wrong.light"), Uint8Array.of(0x23, 0xc3, 0x28, 0x0a));
  writeFileSync(at("project/binary.light"), Uint8Array.of(0x23, 0, 1));
  symlinkSync(at("outside/kit.light"), at("project/link-out.light"));
  symlinkSync(at("outside"), at("project/folder-out"));
  symlinkSync(at("project/kits/kit.light"), at("project/link-in.light"));
  symlinkSync("/dev/zero", at("project/zero.light"));
  symlinkSync(at("project/loop.light"), at("project/loop.light"));
  symlinkSync(at("project/nowhere"), at("project/dangling.light"));
  execFileSync("mkfifo", [at("project/pipe.light")]);
});

const main = (): string => at("project/book/a.light");
/** The text's first title, or the code of the refusal. */
function outcome(path: string, root = at("project"), disk: KitDisk = kitDisk): string {
  const { source, problem } = kitReader(root, main(), disk)(path, main());
  return problem?.code ?? (source?.text === secret ? "SECRET" : "read");
}

describe("reading a kit", () => {
  test.each([
    ["../kits/kit.light", "read"],
    ["./../kits/../kits/kit.light", "read"],
    ["../link-in.light", "read"],
    ["./nothing.light", "file.not-found"],
    ["./a.light/kit.light", "file.not-found"],
    ["../dangling.light", "file.not-found"],
    ["../../outside/kit.light", "file.outside"],
    ["../../outside/nothing.light", "file.outside"],
    ["../../project-b/kit.light", "file.outside"],
    ["../../project/kits/kit.light", "read"],
    ["../../../../../../../../etc/kit.light", "file.outside"],
    ["../link-out.light", "file.outside"],
    ["../folder-out/kit.light", "file.outside"],
    ["../zero.light", "file.outside"],
    ["../loop.light", "file.unreadable"],
    ["../pipe.light", "file.device"],
    ["../folder.light", "file.folder"],
    ["../big.light", "file.too-large"],
    ["../wrong.light", "file.encoding"],
    ["../binary.light", "file.binary"],
    [`../${"a".repeat(400)}.light`, "file.path"],
  ])("%s: %s", (path, code) => {
    expect(outcome(path)).toBe(code);
  });

  test("a finding shows the path as the recipe says it, and nothing of the machine", () => {
    for (const path of ["../big.light", "./nothing.light", "../link-out.light", "../pipe.light"]) {
      const { problem } = kitReader(at("project"), main())(path, main());
      expect(JSON.stringify(problem)).toContain(path);
      expect(JSON.stringify(problem)).not.toContain(top);
    }
  });

  test("a root that is a link is the folder behind it, and a narrow root keeps the rest out", () => {
    symlinkSync(at("project"), at("project-link"));
    expect(outcome("../kits/kit.light", at("project-link"))).toBe("read");
    expect(outcome("../kits/kit.light", at("project/book"))).toBe("file.outside");
  });

  test("a link swapped in between is noticed", () => {
    let asked = 0;
    const swapping: KitDisk = {
      ...kitDisk,
      real: (path) => {
        if (path.endsWith("kit.light") && ++asked > 1) return at("outside/kit.light");
        return kitDisk.real(path);
      },
    };
    expect(outcome("../kits/kit.light", at("project"), swapping)).toBe("file.changed");
  });

  test("a pipe swapped in between does not block, and is no text", () => {
    const swapped: KitDisk = { ...kitDisk, look: () => ({ kind: "file", size: 20 }) };
    expect(outcome("../pipe.light", at("project"), swapped)).toBe("file.changed");
  });

  test("one file has one name, and is read once, however it is reached", () => {
    let reads = 0;
    const counting: KitDisk = {
      ...kitDisk,
      read: (path, limit) => {
        reads++;
        return kitDisk.read(path, limit);
      },
    };
    const here = relative(process.cwd(), main());
    const read = kitReader(at("project"), here, counting);
    const first = read("../kits/kit.light", here).source;
    expect(first?.name).toBe(relative(process.cwd(), at("project/kits/kit.light")));
    expect(read("../link-in.light", here).source).toBe(first);
    expect(read("./kit.light", first?.name ?? "").source).toBe(first);
    expect(reads).toBe(1);
    // The file itself keeps the name that the command was given.
    expect(read("../book/a.light", first?.name ?? "").source?.name).toBe(here);
  });
});

test.each([
  ["/a/b", "/a/b", true],
  ["/a/b", "/a/b/c", true],
  ["/a/b", "/a/b/..c", true],
  ["/a/b", "/a/bc", false],
  ["/a/b", "/a", false],
  ["/", "/a", true],
])("in %s lies %s: %s", (folder, path, inside) => expect(isInside(folder, path)).toBe(inside));

describe("the root", () => {
  const disk = (...marks: readonly string[]) => ({
    exists: (path: string) => marks.includes(path),
    real: (path: string) => path,
    home: () => "/home/keeper",
  });
  test.each<readonly [string, readonly string[], string]>([
    ["/home/keeper/work/book/a.light", ["/home/keeper/work/.git"], "/home/keeper/work"],
    ["/home/keeper/work/book/a.light", ["/home/keeper/work/package.json"], "/home/keeper/work"],
    [
      "/home/keeper/work/book/a.light",
      ["/home/keeper/work/.git", "/home/keeper/work/book/.git"],
      "/home/keeper/work/book",
    ],
    ["/home/keeper/work/book/a.light", [], "/home/keeper/work/book"],
    ["/home/keeper/work/book/a.light", ["/home/keeper/.git"], "/home/keeper/work/book"],
    ["/home/keeper/a.light", ["/home/keeper/.git"], "/home/keeper"],
    ["/srv/a.light", ["/.git"], "/srv"],
  ])("of %s with %j is %s", (file, marks, root) => expect(projectRoot(file, disk(...marks))).toBe(root));
});
