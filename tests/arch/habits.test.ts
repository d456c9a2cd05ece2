import { describe, expect, test } from "vitest";
import { badHabits, moduleState } from "./habits.js";
import { allSources, sourceFile } from "./source-tree.js";

/** Top-level variables that hold what is built once and never changes after that: the lexer, the parser. */
const builtOnce: ReadonlySet<string> = new Set([]);
/** Uses of the calendar that take their date from the recipe, never from the clock. */
const calendar: ReadonlySet<string> = new Set([]);

describe("src", () => {
  test("has no console output, no chance, no clock, no ** and no export *", () => {
    const found = allSources()
      .filter((file) => !calendar.has(file.path))
      .flatMap(badHabits);
    expect(found).toEqual([]);
  });

  test("has no state in its modules", () => {
    const found = allSources()
      .filter((file) => !builtOnce.has(file.path))
      .flatMap(moduleState);
    expect(found).toEqual([]);
  });
});

describe("the check of habits", () => {
  const habits = (text: string, path = "core/a.ts") => badHabits(sourceFile(path, text));

  test.each([
    ["console.log(1)", "console output"],
    ["const log = console;", "console output"],
    ["const a = 2 ** 3;", "** differs"],
    ["let a = 2; a **= 3;", "** differs"],
    ["Math.pow(2, 3)", "Math.pow"],
    ["Math.exp(stops * Math.LN2)", "exp2 of core"],
    ["Math.random()", "Math.random"],
    ["Date.now()", "Date"],
    ["new Date()", "Date"],
    ["new Intl.NumberFormat()", "Intl"],
    ["names.sort((a, b) => a.localeCompare(b))", "localeCompare"],
    ["(1).toLocaleString()", "toLocaleString"],
    ["process.env.HOME", "process outside"],
    ['new Function("return 1")', "Function"],
    ['export * from "./b.js";', "export *"],
    ["class A {}", "a class"],
  ])("names %s", (text, what) => {
    expect(habits(text).join()).toContain(what);
  });

  test("lets plain code pass, and words in texts and comments", () => {
    expect(
      habits('// console.log(2 ** 3)\nconst a = "Math.random()"; const b = { Date: 1 }; b.Date;'),
    ).toEqual([]);
  });

  test("knows that the command may talk to the machine but may not leave early", () => {
    expect(habits("process.argv", "cli/a.ts")).toEqual([]);
    expect(habits("process.exit(1)", "cli/a.ts").join()).toContain("process.exit");
    expect(habits("class A {}", "syntax/parser.ts")).toEqual([]);
  });

  test("names a variable at the top of a file", () => {
    expect(
      moduleState(sourceFile("core/a.ts", "let a = 1;\nconst b = 2;\nfunction f() { let c = 3; }")),
    ).toEqual(["core/a.ts:1: a variable at the top of a file"]);
  });
});
