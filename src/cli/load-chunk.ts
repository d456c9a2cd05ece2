import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Script } from "node:vm";

declare const require: unknown;
declare const __dirname: string;

/** The file of compiled code that belongs to a chunk, for the engine that runs now. */
export const cacheName = (file: string): string => `${file}.${process.versions.v8}.${process.arch}.cache`;

/** The compiled code that the build left beside a chunk, or nothing. */
function compiledCode(file: string): Buffer | undefined {
  try {
    return readFileSync(cacheName(file));
  } catch {
    return undefined;
  }
}

/**
 * Loads one part of the built program. Only the build puts this in the place of an `import()`. The engine compares the
 * compiled code with its own version, its flags and the text, and compiles anew where they differ.
 */
export function loadChunk(name: string): unknown {
  const file = join(__dirname, `cli-${name}.cjs`);
  const text = readFileSync(file, "latin1");
  const wrapped = `(function (exports, require, module, __filename, __dirname) {${text}\n})`;
  const cachedData = compiledCode(file);
  // The name goes into the compiled code: without the folder, which is another one on every machine.
  const filename = `cli-${name}.cjs`;
  const script = new Script(wrapped, cachedData === undefined ? { filename } : { filename, cachedData });
  const start: unknown = script.runInThisContext();
  const module = { exports: {} };
  if (typeof start === "function") start(module.exports, require, module, file, __dirname);
  return module.exports;
}
