import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { allPages, ROOT, readPage } from "./pages.js";

const { scripts } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as {
  readonly scripts: Readonly<Record<string, string>>;
};

test("every script that a page names exists", () => {
  const missing = allPages().flatMap((page) =>
    [...page.text.matchAll(/npm (?:run ([\w:-]+)|(start|test)\b)/g)]
      .map(([, run, plain]) => run ?? plain ?? "")
      .filter((name) => !Object.hasOwn(scripts, name))
      .map((name) => `${page.path}: ${name}`),
  );
  expect(missing).toEqual([]);
});

test("the front page has two commands to set up, and the first works out an example that is there", () => {
  const commands = [...readPage("README.md").text.matchAll(/^npm ci && (.*)$/gm)].map(([, rest]) => rest);
  expect(commands).toEqual(["npm start", "npm test"]);
  const [, example = ""] = /(examples\/\S+\.light)/.exec(scripts.start ?? "") ?? [];
  expect(existsSync(join(ROOT, example)), example).toBe(true);
});
