import { type FSWatcher, statSync, watch } from "node:fs";
import { dirname } from "node:path";

/** Looks whether files change. */
export interface Watcher {
  /** What tells one state of a file from another; the same text for the same state, also where there is no file. */
  stamp(path: string): string;
  /**
   * Waits until files are no longer as their stamps say and have come to rest, or until the person at the terminal ends it
   * by Ctrl-C.
   */
  change(stamps: ReadonlyMap<string, string>): Promise<"changed" | "ended">;
}

/** Between two looks where the system tells nothing, as on some network drives, ms. */
const POLL = 1000;
/** For how long files have to be at rest, since editors write in several steps, ms. */
const REST = 80;

function stamp(path: string): string {
  try {
    const { mtimeMs, size, ino } = statSync(path);
    return `${mtimeMs} ${size} ${ino}`;
  } catch {
    return "";
  }
}

/**
 * A watcher of this machine. Folders are watched and not files, since many editors put a new file in the place of the old
 * one; beside that the files are looked at now and then. It takes Ctrl-C from now on: the first ends the watch.
 */
export function fileWatcher(): Watcher {
  let hasEnded = false;
  let end = (): void => undefined;
  process.once("SIGINT", () => {
    hasEnded = true;
    end();
  });
  return {
    stamp,
    change: (stamps) =>
      new Promise((resolve) => {
        const watchers: FSWatcher[] = [];
        let rest: NodeJS.Timeout | undefined;
        let seen = "";
        const finish = (how: "changed" | "ended"): void => {
          clearInterval(poll);
          clearTimeout(rest);
          for (const watcher of watchers) watcher.close();
          resolve(how);
        };
        const look = (): void => {
          const now = [...stamps.keys()].map(stamp).join("\n");
          if (now === [...stamps.values()].join("\n")) return;
          if (now === seen) {
            finish("changed");
            return;
          }
          seen = now;
          clearTimeout(rest);
          rest = setTimeout(look, REST);
        };
        const poll = setInterval(look, POLL);
        end = () => finish("ended");
        if (hasEnded) {
          finish("ended");
          return;
        }
        for (const folder of new Set([...stamps.keys()].map((path) => dirname(path)))) {
          try {
            const watcher = watch(folder, look);
            // Where a folder cannot be watched, or no longer, its files are looked at all the same.
            watcher.on("error", () => watcher.close());
            watchers.push(watcher);
          } catch {}
        }
        look();
      }),
  };
}
