import { describe, expect, test } from "vitest";
import { fencesOf } from "./fences.js";
import { allPages } from "./pages.js";
import { printed, type Sample, typeErrors } from "./samples.js";

/** Every sample of code in the pages, with what the page says that it prints. */
const samples = allPages().flatMap((page) => {
  const fences = fencesOf(page.text);
  return fences.flatMap((fence, index): readonly (Sample & { readonly prints: string | null })[] => {
    if (fence.language !== "ts") return [];
    const next = fences[index + 1];
    const name = `${page.path.replace(/\W+/g, "-")}-${fence.line}`;
    return [{ name, text: fence.text, prints: next?.marks.has("prints") === true ? next.text : null }];
  });
});

describe("samples of code", () => {
  test("have no errors of types", () => {
    expect(typeErrors(samples)).toEqual([]);
  });

  test("an error of types is found", () => {
    const sample = {
      name: "wrong",
      text: 'import { m } from "halfshade";\nconst x: string = m(2);\nconsole.log(x);',
    };
    expect(typeErrors([sample]).join()).toContain("not assignable to type 'string'");
  });

  test.each(samples.map((sample) => [sample.name, sample] as const))(
    "%s prints what the page says",
    async (_, sample) => {
      expect(sample.prints, "the page says what it prints").not.toBeNull();
      expect(await printed(sample)).toBe(sample.prints);
    },
  );
});
