import { checkFindings } from "./check.js";
import { fileFindings } from "./file.js";
import { lexFindings } from "./lex.js";
import { parseFindings } from "./parse.js";
import type { CatalogueRow } from "./row.js";
import { sceneFindings } from "./scene.js";

/** Every finding about a text that the program can make, by code. */
export const catalogue = {
  ...fileFindings,
  ...lexFindings,
  ...parseFindings,
  ...checkFindings,
  ...sceneFindings,
} as const satisfies Record<string, CatalogueRow>;

/** A code of the catalogue, for example `unit.unknown`. */
export type Code = keyof typeof catalogue;

/** The `{words}` of a template; braces that hold anything but one word, as in `room { ... }`, are text. */
type Holes<S extends string> = S extends `${string}{${infer Name}}${infer Rest}`
  ? (Name extends `${string} ${string}` ? never : Name) | Holes<Rest>
  : never;

/** The arguments that a code's sentence and help need. */
export type ArgsOf<C extends Code> = Record<
  Holes<(typeof catalogue)[C]["message"]> | Holes<(typeof catalogue)[C]["help"]>,
  string | number
>;
