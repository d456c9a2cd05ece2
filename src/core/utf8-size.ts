/** Bytes of the text in UTF-8. */
export function utf8Size(text: string): number {
  let size = text.length;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code < 0x80) continue;
    if (code < 0x800) size += 1;
    else if (code < 0xdc00 || code > 0xdfff) size += 2;
  }
  return size;
}
