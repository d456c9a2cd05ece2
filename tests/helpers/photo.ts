/** One tag of a picture: its number, and a short, or a quotient of two longs. */
export type PhotoTag = readonly [tag: number, value: number | readonly [number, number]];

/** A JPEG with nothing but tags in it, laid out by hand as JEITA CP-3451 has it: little-endian, one directory each. */
export function jpegWith(tags: readonly PhotoTag[], top: readonly PhotoTag[] = []): Uint8Array {
  const bytes: number[] = [];
  const u16 = (value: number): void => void bytes.push(value & 255, (value >> 8) & 255);
  const u32 = (value: number): void => {
    u16(value & 65535);
    u16(Math.floor(value / 65536));
  };
  const size = (rows: readonly PhotoTag[]): number => 2 + 12 * rows.length + 4;
  const EXIF: PhotoTag = [0x8769, 0];
  const first = [...top, EXIF].sort(([a], [b]) => a - b);
  const second = [...tags].sort(([a], [b]) => a - b);
  const exifAt = 8 + size(first);
  let longs = exifAt + size(second);
  const tail: (readonly [number, number])[] = [];
  const directory = (rows: readonly PhotoTag[]): void => {
    u16(rows.length);
    for (const [tag, value] of rows) {
      u16(tag);
      if (tag === 0x8769) {
        u16(4);
        u32(1);
        u32(exifAt);
      } else if (typeof value === "number") {
        u16(3);
        u32(1);
        u32(value);
      } else {
        u16(5);
        u32(1);
        u32(longs);
        longs += 8;
        tail.push(value);
      }
    }
    u32(0);
  };
  bytes.push(0x49, 0x49, 42, 0);
  u32(8);
  directory(first);
  directory(second);
  for (const [over, under] of tail) {
    u32(over);
    u32(under);
  }
  const length = bytes.length + 8;
  return Uint8Array.from([
    ...[0xff, 0xd8, 0xff, 0xe1, (length >> 8) & 255, length & 255],
    ...[0x45, 0x78, 0x69, 0x66, 0, 0],
    ...bytes,
    ...[0xff, 0xd9],
  ]);
}

/** 85 mm at f/8, 1/125 s, ISO 200, 6000 x 4000 pixels stored level. */
export const usual: readonly PhotoTag[] = [
  [0x829a, [1, 125]],
  [0x829d, [8, 1]],
  [0x8827, 200],
  [0x920a, [85, 1]],
  [0xa002, 6000],
  [0xa003, 4000],
];
