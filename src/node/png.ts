import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

declare const __dirname: string | undefined;

/** A picture as PNG, or why it cannot be made. */
export type Png = { readonly bytes: Uint8Array } | { readonly problem: string };

/** The folder this runs from: that of the build, or that of this file. */
const here = (): string =>
  typeof __dirname === "string" ? __dirname : dirname(fileURLToPath(import.meta.url));

/** The letters that come with the project; null where the build was taken apart. */
export function fontFile(): string | null {
  const folder = here();
  const files = [join(folder, "font/regular.ttf"), join(folder, "../render/font/regular.ttf")];
  return files.find((file) => existsSync(file)) ?? null;
}

/** The library that draws pixels; it is optional, since it is made for each kind of machine. */
function drawer(): typeof import("@resvg/resvg-js") | null {
  try {
    return createRequire(join(here(), "any.js"))("@resvg/resvg-js");
  } catch {
    return null;
  }
}

/** An SVG of ours as PNG, with our own letters and none of the machine's, so that all machines give the same picture. */
export function pngOf(svg: string, width: number): Png {
  const library = drawer();
  if (library === null) {
    return {
      problem:
        "PNG needs the optional package @resvg/resvg-js, which is not installed here. Install it, or ask for SVG.",
    };
  }
  const font = fontFile();
  if (font === null) return { problem: "The file with the letters is missing from this installation." };
  const drawn = new library.Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: [font], defaultFontFamily: "Noto Sans" },
    fitTo: { mode: "width", value: width },
  });
  return { bytes: drawn.render().asPng() };
}
