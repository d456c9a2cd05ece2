import {
  grey,
  type PaperItem,
  type PaperPage,
  type PaperPath,
  type PaperText,
  type TextWidth,
} from "../core/paper.js";
import { fontFile, noLetters, optionalPackage } from "./letters.js";

type Document = InstanceType<typeof import("pdfkit")>;

/** What makes PDF: it knows the letters, and writes pages. */
export interface PdfMaker {
  /** In points. */
  readonly widthOf: TextWidth;
  /** Whether the letters have every sign of a text. */
  readonly hasAll: (text: string) => boolean;
  /** Pages whose unit is the point, as one file; the same pages give the same bytes, which hold no date. */
  readonly write: (pages: readonly PaperPage[], title: string) => Promise<Uint8Array>;
}

/** Makes PDF ready, or says why there is none. */
export function pdfMaker(): PdfMaker | { readonly problem: string } {
  const found = optionalPackage("pdfkit") as
    | typeof import("pdfkit")
    | { readonly default: typeof import("pdfkit") }
    | null;
  if (found === null) {
    return {
      problem:
        "PDF needs the optional package pdfkit, which is not installed here. Install it, or ask for html and print that.",
    };
  }
  const Pdf = "default" in found ? found.default : found;
  const font = fontFile();
  if (font === null) return { problem: noLetters };
  const fresh = (title: string): Document => {
    const info = { Title: title, Creator: "halfshade", Producer: "halfshade", CreationDate: new Date(0) };
    const made = new Pdf({ autoFirstPage: false, lang: "en", displayTitle: true, info });
    // The day on which it was made would make every file another: what cannot be listed is not written.
    Object.defineProperty(made.info, "CreationDate", { enumerable: false });
    made.registerFont(LETTERS, font);
    return made.font(LETTERS);
  };
  const ruler = fresh("");
  return {
    widthOf: (text, size) => ruler.fontSize(size).widthOfString(text),
    hasAll: (text) => {
      const { font: own } = (
        ruler as unknown as {
          readonly _font: { readonly font: { hasGlyphForCodePoint(code: number): boolean } };
        }
      )._font;
      return [...text].every((sign) => own.hasGlyphForCodePoint(sign.codePointAt(0) ?? 0));
    },
    write: (pages, title) =>
      new Promise((resolve, reject) => {
        const made = fresh(title);
        const parts: Uint8Array[] = [];
        made.on("data", (part: Uint8Array) => parts.push(part));
        made.on("end", () => resolve(Buffer.concat(parts)));
        made.on("error", reject);
        for (const { width, height, items } of pages) {
          made.addPage({ size: [width, height], margin: 0 });
          for (const item of items) draw(made, item);
        }
        made.end();
      }),
  };
}

const LETTERS = "letters";
const draw = (to: Document, item: PaperItem): void =>
  item.kind === "path" ? drawPath(to, item) : drawText(to, item);

function drawPath(to: Document, { rings, closed, fill, stroke }: PaperPath): void {
  for (const ring of rings) {
    ring.forEach(([x, y], i) => {
      if (i === 0) to.moveTo(x, y);
      else to.lineTo(x, y);
    });
    if (closed) to.closePath();
  }
  if (stroke !== null) {
    to.lineWidth(stroke.width).lineJoin("round").strokeColor(grey(stroke.tone, "light"));
    const { dash } = stroke;
    if (dash.length > 0) to.dash(dash as unknown as number, {});
    else to.undash();
  }
  if (fill !== null) to.fillColor(grey(fill, "light"));
  if (fill !== null && stroke !== null) to.fillAndStroke();
  else if (fill !== null) to.fill();
  else if (stroke !== null) to.stroke();
}

/** How far the paper is kept clear above and below the middle of a text, and before and behind it, in its size. */
const CLEAR = 0.46;
const ASIDE = 0.1;

function drawText(to: Document, text: PaperText): void {
  const { at, size, anchor, tone, strong, turn, clear } = text;
  if (text.text === "") return;
  to.fontSize(size);
  const wide = to.widthOfString(text.text);
  const [x, y] = at;
  const left = x - (anchor === "start" ? 0 : anchor === "middle" ? wide / 2 : wide);
  to.save();
  if (turn !== 0) to.rotate(-turn, { origin: [x, y] });
  if (clear)
    to.rect(left - ASIDE * size, y - CLEAR * size, wide + 2 * ASIDE * size, 2 * CLEAR * size).fill("#ffffff");
  to.fillColor(grey(tone, "light"));
  if (strong)
    to.undash()
      .lineWidth(size * 0.045)
      .strokeColor(grey(tone, "light"));
  to.text(text.text, left, y + 0.35 * size, {
    lineBreak: false,
    baseline: "alphabetic",
    fill: true,
    stroke: strong,
  });
  to.restore();
}
