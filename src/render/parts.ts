/** Words inside a paragraph. */
export type ViewWords =
  | { readonly kind: "text"; readonly text: string }
  | { readonly kind: "strong"; readonly text: string }
  | { readonly kind: "break" };

/** One column of a table in a view. */
export interface ViewColumn {
  readonly title: string;
  readonly align: "left" | "right" | null;
}

/**
 * One part of a view, from which Markdown, the tree of a page or HTML is printed. Texts are plain: what they would mean
 * to the language of a page is for the printer to take away.
 */
export type ViewPart =
  | { readonly kind: "heading"; readonly level: number; readonly text: string }
  | { readonly kind: "paragraph"; readonly inlines: readonly ViewWords[] }
  | { readonly kind: "list"; readonly items: readonly string[] }
  | {
      readonly kind: "table";
      readonly columns: readonly ViewColumn[];
      readonly rows: readonly (readonly string[])[];
    }
  | { readonly kind: "code"; readonly language: string; readonly text: string }
  | {
      readonly kind: "figure";
      /** Title and description, for pages that cannot show it. */
      readonly words: string;
      /** As SVG without empty lines. */
      readonly svg: string;
      /** The same as an element of a tree of HTML (hast). */
      readonly element: object;
    };

/** A heading. */
export const heading = (level: number, text: string): ViewPart => ({ kind: "heading", level, text });
/** Plain words. */
export const words = (text: string): ViewWords => ({ kind: "text", text });
/** Words that stand out. */
export const strong = (text: string): ViewWords => ({ kind: "strong", text });
/** The end of a line inside a paragraph. */
export const lineBreak: ViewWords = { kind: "break" };
/** A paragraph. */
export const paragraph = (...inlines: readonly ViewWords[]): ViewPart => ({ kind: "paragraph", inlines });
/**
 * A figure in a page of HTML or Markdown. It begins with a tag that opens a block of HTML in Markdown and has no empty
 * line, at which such a block would end (CommonMark 0.31, HTML blocks, condition 6).
 */
export const figureHtml = (svg: string): string => `<figure>\n${svg}\n</figure>`;
/** A list with a dot before each item. */
export const list = (items: readonly string[]): ViewPart => ({ kind: "list", items });
