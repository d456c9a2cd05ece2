import { existsSync, fstatSync, writeSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import { fileWatcher, type Watcher } from "../node/file-watcher.js";

declare const __dirname: string | undefined;

/** What a command needs of the machine it runs on; tests put their own in its place. */
export interface Machine {
  /** Data, for the next program or for reading. */
  out(text: string): void;
  /** Words to the person at the terminal. */
  err(text: string): void;
  /** Whether data is still read, as far as is known; a machine that cannot tell leaves it out. */
  isRead?(): boolean;
  /** The bytes that come in. */
  input(): AsyncIterable<Uint8Array>;
  /** A variable of the environment; undefined where it is not set. */
  env(name: string): string | undefined;
  /** Cells of a line when data goes to a terminal, else null. */
  columns(): number | null;
  /** Threads that run at the same moment. */
  cores(): number;
  /** The built file of a thread that checks recipes; null where the program runs from its sources. */
  workerFile(): string | null;
  /** What tells that files change; it takes Ctrl-C from then on. A machine that cannot tell leaves it out. */
  watcher?(): Watcher;
  /** Whether data, and words, go to a terminal. */
  readonly outIsTerminal: boolean;
  readonly errIsTerminal: boolean;
}

const STDOUT = 1;
const STDERR = 2;

const codeOf = (error: unknown): unknown =>
  typeof error === "object" && error !== null && "code" in error ? error.code : undefined;

/**
 * Writes a text whole, however slow the reader: a full pipe is waited for. False when the reader has gone, as in
 * `halfshade report plan.light | head`; then there is nobody to tell.
 */
function writeAll(handle: number, text: string): boolean {
  const bytes = Buffer.from(text, "utf8");
  let at = 0;
  while (at < bytes.length) {
    try {
      at += writeSync(handle, bytes, at);
    } catch (error) {
      const code = codeOf(error);
      if (code === "EPIPE") return false;
      if (code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, 5);
    }
  }
  return true;
}

/**
 * Whether a handle is a terminal. A pipe or a file is told from its kind alone, so that the modules of the terminal are
 * not loaded for it: they are a tenth of a cold start.
 */
function isTerminal(handle: 1 | 2): boolean {
  try {
    if (!fstatSync(handle).isCharacterDevice()) return false;
  } catch {
    return false;
  }
  return (handle === STDOUT ? process.stdout : process.stderr).isTTY === true;
}

/** The machine this process runs on. */
export function machine(): Machine {
  let outOpen = true;
  let errOpen = true;
  const outIsTerminal = isTerminal(STDOUT);
  return {
    outIsTerminal,
    errIsTerminal: isTerminal(STDERR),
    out: (text) => {
      outOpen = outOpen && writeAll(STDOUT, text);
    },
    isRead: () => outOpen,
    err: (text) => {
      errOpen = errOpen && writeAll(STDERR, text);
    },
    input: () => process.stdin,
    env: (name) => process.env[name],
    cores: availableParallelism,
    workerFile() {
      if (typeof __dirname === "undefined") return null;
      const file = join(__dirname, "cli-worker.cjs");
      return existsSync(file) ? file : null;
    },
    watcher: fileWatcher,
    columns: () => (outIsTerminal ? process.stdout.columns : null),
  };
}
