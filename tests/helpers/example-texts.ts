import { readdirSync, readFileSync } from "node:fs";

const folder = new URL("../../examples/", import.meta.url).pathname;

/** Every text of the examples and of the lessons in them, by its path, in order. */
export const exampleTexts: readonly { readonly name: string; readonly text: string }[] = readdirSync(folder, {
  recursive: true,
})
  .map(String)
  .filter((name) => name.endsWith(".light"))
  .sort()
  .map((name) => ({ name: `examples/${name}`, text: readFileSync(folder + name, "utf8") }));
