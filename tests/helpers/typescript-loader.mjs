import { readFile } from "node:fs/promises";
import { register } from "node:module";
import { fileURLToPath } from "node:url";
import { isMainThread } from "node:worker_threads";
import { transform } from "esbuild";

/*
 * Lets Node load the sources as they are, with the types taken out: modules then call each other directly, as in the
 * build. The test runner's own module loader puts an accessor between them, which makes hot functions up to twice as
 * slow; another loader that wraps every function to keep its name made some five times as slow.
 */
if (isMainThread) register(import.meta.url);

/** Finds x.ts where x.js is asked for. */
export async function resolve(specifier, context, next) {
  if (/^[./]/.test(specifier) && specifier.endsWith(".js") && !context.parentURL?.includes("/node_modules/")) {
    try {
      return await next(specifier.replace(/js$/, "ts"), context);
    } catch (problem) {
      if (problem?.code !== "ERR_MODULE_NOT_FOUND") throw problem;
    }
  }
  return next(specifier, context);
}

/** Takes the types out. */
export async function load(url, context, next) {
  const place = url.replace(/\?.*$/, "");
  if (!place.startsWith("file:") || !place.endsWith(".ts")) return next(url, context);
  const path = fileURLToPath(place);
  const { code } = await transform(await readFile(path, "utf8"), {
    format: "esm",
    loader: "ts",
    sourcefile: path,
    sourcemap: "inline",
    target: "node20",
  });
  return { format: "module", source: code, shortCircuit: true };
}
