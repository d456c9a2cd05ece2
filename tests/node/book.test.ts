import { describe, expect, test } from "vitest";
import { type BookDisk, filesOf, type Listed, MOST_FILES } from "../../src/node/book.js";
import { partMatches } from "../../src/node/glob.js";

/** A disk with some files; a name that ends in `@` is a link to a folder, one that ends in `!` a pipe. */
function diskOf(...paths: readonly string[]): BookDisk & { readonly asked: string[] } {
  const asked: string[] = [];
  const tree = new Map<string, Listed["kind"]>();
  for (const path of paths) {
    const parts = path.split("/");
    for (let i = 1; i < parts.length; i++) tree.set(parts.slice(0, i).join("/"), "folder");
    tree.set(path.replace(/[@!]$/, ""), /[@!]$/.test(path) ? "other" : "file");
  }
  const clean = (path: string): string => path.replace(/^\.\/|\/$/g, "");
  return {
    asked,
    kind: (path) => (path === "." ? "folder" : (tree.get(clean(path)) ?? null)),
    list: (folder) => {
      asked.push(folder);
      const at = folder === "." ? "" : `${clean(folder)}/`;
      return [...tree]
        .filter(([path]) => path.startsWith(at) && !path.slice(at.length).includes("/"))
        .map(([path, kind]) => ({ name: path.slice(at.length), kind }))
        .reverse();
    },
  };
}

const disk = diskOf(
  "a.light",
  "b.txt",
  "book/z.light",
  "book/a.light",
  "book/day/two.light",
  "book/day/one.light",
  "book/day.light",
  "book/notes.md",
  "book/.hidden.light",
  "book/.git/c.light",
  "book/node_modules/d.light",
  "book/elsewhere@",
  "book/pipe.light!",
  "empty/readme.md",
  "odd/*.light",
  "odd/x.light",
);

describe("the files that operands mean", () => {
  test.each<readonly [readonly string[], readonly string[], boolean]>([
    [["a.light"], ["a.light"], false],
    [["-"], ["-"], false],
    [["nowhere.light"], ["nowhere.light"], false],
    [["a.light", "-", "a.light"], ["a.light", "-"], false],
    [
      ["book"],
      ["book/a.light", "book/day.light", "book/day/one.light", "book/day/two.light", "book/z.light"],
      true,
    ],
    [["book/day/"], ["book/day/one.light", "book/day/two.light"], true],
    [["book/*.light"], ["book/a.light", "book/day.light", "book/z.light"], true],
    [["./book/?.light"], ["./book/a.light", "./book/z.light"], true],
    [["book/**/*o*.light"], ["book/day/one.light", "book/day/two.light"], true],
    [["**/a.light"], ["a.light", "book/a.light"], true],
    [["**/**/**/a.light"], ["a.light", "book/a.light"], true],
    [["book/.*.light"], ["book/.hidden.light"], true],
    [["b*/d*/*"], ["book/day/one.light", "book/day/two.light"], true],
    // A file of that very name is meant, not a pattern.
    [["odd/*.light"], ["odd/*.light"], false],
    [
      ["book/day", "a.light", "book/day/one.light"],
      ["book/day/one.light", "book/day/two.light", "a.light"],
      true,
    ],
  ])("%j", (operands, files, gathered) => {
    expect(filesOf(operands, disk)).toEqual({ files, gathered });
  });

  test.each([
    [["empty"], 'There is no file in the folder "empty" whose name ends in .light.'],
    [["a.light", "x*.light"], 'No file is called like "x*.light".'],
  ])("%j means nothing", (operands, problem) => {
    expect(filesOf(operands, disk)).toEqual({ problem });
  });

  test("links to folders, hidden folders and packages of others are not walked into", () => {
    const seen = diskOf("book/a.light", "book/.git/c.light", "book/node_modules/d.light", "book/elsewhere@");
    filesOf(["book", "**/*.light"], seen);
    expect(seen.asked.filter((folder) => /git|node_modules|elsewhere/.test(folder))).toEqual([]);
  });

  test("too many files are refused, and a deep tree ends", () => {
    const many = diskOf();
    const wide: BookDisk = {
      ...many,
      kind: () => "folder",
      list: () => Array.from({ length: MOST_FILES + 1 }, (_, i) => ({ name: `${i}.light`, kind: "file" })),
    };
    expect(filesOf(["book"], wide).problem).toMatch(/^More than 10000 files/);
    let asked = 0;
    const deep: BookDisk = {
      kind: () => "folder",
      list: () => {
        asked++;
        return [
          { name: "in", kind: "folder" },
          { name: "a.light", kind: "file" },
        ];
      },
    };
    expect(filesOf(["book"], deep).files).toHaveLength(33);
    expect(asked).toBe(33);
  });
});

describe("one part of a pattern", () => {
  test.each([
    ["*", "", true],
    ["*", "anything", true],
    ["*.light", "a.light", true],
    ["*.light", "a.lights", false],
    ["a*b*c", "aXbYc", true],
    ["a*b*c", "abcb", false],
    ["?", "é", true],
    ["?", "😀", true],
    ["?", "", false],
    ["*", ".hidden", false],
    [".*", ".hidden", true],
    ["[a]", "a", false],
    ["[a]", "[a]", true],
    ["a.b", "aXb", false],
  ])("%s and %s: %s", (pattern, part, same) => expect(partMatches(pattern, part)).toBe(same));

  test("takes no time that grows faster than both lengths multiplied", () => {
    // A search that tried every way would take 2^20 steps for each letter here.
    expect(partMatches(`${"*a".repeat(20)}b`, "a".repeat(20_000))).toBe(false);
  });
});
