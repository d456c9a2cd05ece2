const entities: ReadonlyMap<string, string> = new Map([
  ["&", "&amp;"],
  ["<", "&lt;"],
  [">", "&gt;"],
  ['"', "&quot;"],
  ["'", "&#39;"],
]);

/** A text of a user as HTML text or attribute value: it stays that text. Signs that HTML does not know become U+FFFD. */
export function htmlText(text: string): string {
  return text
    .replace(/[^\t\n\r -\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu, "\ufffd")
    .replace(/[\u007f-\u009f]/g, "\ufffd")
    .replace(/[&<>"']/g, (sign) => entities.get(sign) ?? sign);
}
