import { visibleLine } from "../../src/diagnostics/print-visible.js";
import { drawFigure } from "../../src/figures.js";
import { run } from "../../src/pipeline.js";
import { renderSvg } from "../../src/render/figures/svg.js";
import { markdownText } from "../../src/render/markdown-escape.js";
import { exampleTexts } from "../helpers/example-texts.js";
import { withOurKits } from "../helpers/kits.js";

/** The figures of an example that are shown. */
const shown = ["plan", "frame", "ratio", "falloff"] as const;

/** A file of the gallery by its path from the project's folder. */
export interface GalleryFile {
  readonly path: string;
  readonly text: string;
}

/** The gallery: a page, and a file for each of these figures of every recipe at the top of `examples`. */
export function galleryFiles(): readonly GalleryFile[] {
  const files: GalleryFile[] = [];
  const parts: string[] = [];
  for (const { name, text } of exampleTexts) {
    if (name.split("/").length !== 2) continue;
    const { evaluated } = run({ name, text }, withOurKits);
    if (evaluated === null) continue;
    const images: string[] = [];
    for (const figure of shown) {
      const drawing = drawFigure(evaluated, figure);
      if (typeof drawing === "string") continue;
      const path = `gallery/${name.replace(/^examples\//, "").replace(/\.light$/, "")}-${figure}.svg`;
      files.push({ path: `docs/${path}`, text: renderSvg(drawing, { width: 640, theme: "light" }) });
      images.push(`![${markdownText(drawing.title)}](${path})`);
    }
    const { title } = evaluated.report;
    parts.push(
      `## ${markdownText(visibleLine(title))}\n\n[The recipe](../${name})\n\n${images.join("\n\n")}`,
    );
  }
  const page = `# Gallery

Plan, picture, ratio and fall-off of every recipe in \`examples\`, as \`halfshade draw\` makes them; [figures](guide/figures.md) says how to read them.

${parts.join("\n\n")}
`;
  return [{ path: "docs/gallery.md", text: page }, ...files];
}
