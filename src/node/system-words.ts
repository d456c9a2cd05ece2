/** Errors of the system in words. */
const words: ReadonlyMap<string, string> = new Map([
  ["ENOSPC", "the disk is full"],
  ["EDQUOT", "the disk space allowed to you is used up"],
  ["EROFS", "the disk can only be read"],
  ["EIO", "the disk reports a fault"],
  ["EMFILE", "too many files are open"],
  ["EFBIG", "the file would be too large"],
  ["EBUSY", "another program holds it"],
]);

/** A code of the system as a reason: in words where it has some, else the code itself. */
export function systemWords(code: string): string {
  return words.get(code) ?? `the system says ${code}`;
}
