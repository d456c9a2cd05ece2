import { fontFile, noLetters, optionalPackage } from "./letters.js";

/** A picture as PNG, or why it cannot be made. */
export type Png = { readonly bytes: Uint8Array } | { readonly problem: string };

/** An SVG of ours as PNG, with our own letters and none of the machine's, so that all machines give the same picture. */
export function pngOf(svg: string, width: number): Png {
  // It is optional, since it is made for each kind of machine.
  const library = optionalPackage("@resvg/resvg-js") as typeof import("@resvg/resvg-js") | null;
  if (library === null) {
    return {
      problem:
        "PNG needs the optional package @resvg/resvg-js, which is not installed here. Install it, or ask for SVG.",
    };
  }
  const font = fontFile();
  if (font === null) return { problem: noLetters };
  const drawn = new library.Resvg(svg, {
    font: { loadSystemFonts: false, fontFiles: [font], defaultFontFamily: "Noto Sans" },
    fitTo: { mode: "width", value: width },
  });
  return { bytes: drawn.render().asPng() };
}
