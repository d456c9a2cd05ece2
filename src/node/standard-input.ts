import { MAX_SOURCE_BYTES } from "../core/limits.js";
import { type ReadText, textOfBytes } from "./text-file.js";

/** The name under which a text from standard input is reported. */
export const STANDARD_INPUT = "standard-input";

/** Reads a stream of bytes to its end, or until it is above the cap. */
export async function readStream(
  stream: AsyncIterable<Uint8Array>,
  limit = MAX_SOURCE_BYTES,
): Promise<ReadText> {
  const parts: Uint8Array[] = [];
  let length = 0;
  for await (const part of stream) {
    parts.push(part);
    length += part.length;
    if (length > limit) break;
  }
  return textOfBytes(STANDARD_INPUT, Buffer.concat(parts), limit);
}
