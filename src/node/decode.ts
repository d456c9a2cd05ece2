/** Bytes at the start in which a zero byte shows that the file is no text. */
const SNIFFED = 8192;

/**
 * Strict UTF-8: a wrong byte is refused, never replaced. A byte order mark stays in the text as its first letter.
 * @returns the text, or `binary` where a zero byte stands near the start, or `encoding` for any other wrong byte.
 */
export function decodeText(bytes: Uint8Array): { readonly text: string } | "binary" | "encoding" {
  if (isUtf16(bytes)) return "encoding";
  if (bytes.subarray(0, SNIFFED).includes(0)) return "binary";
  try {
    return { text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
  } catch {
    return "encoding";
  }
}

/** True for a text with the byte order mark of UTF-16, which holds zero bytes and is a text all the same. */
function isUtf16(bytes: Uint8Array): boolean {
  return (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
}
