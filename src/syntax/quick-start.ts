import { type ILookaheadStrategy, LLkLookaheadStrategy } from "chevrotain";

/** Builds a function when it is first called. */
function lazily<F extends (...args: never[]) => unknown>(build: () => F): F {
  const made: { ahead: F | null } = { ahead: null };
  const call = function (this: unknown, ...args: never[]): unknown {
    made.ahead ??= build();
    return made.ahead.apply(this, args);
  };
  return call as F;
}

/**
 * The library's own way of looking one token ahead, with each decision worked out when it is first needed and not for
 * the whole grammar at the start: a cold start on a short text takes few of them.
 */
export function lazyLookahead(): ILookaheadStrategy {
  const usual = new LLkLookaheadStrategy({ maxLookahead: 1 });
  return {
    validate: (options) => usual.validate(options),
    buildLookaheadForAlternation: (options) => lazily(() => usual.buildLookaheadForAlternation(options)),
    buildLookaheadForOptional: (options) => lazily(() => usual.buildLookaheadForOptional(options)),
  };
}

interface Recorder {
  RECORDING_PHASE: boolean;
  enableRecording(): void;
  disableRecording(): void;
}

/**
 * While the grammar is recorded the library puts other methods on the parser, and deletes them afterwards. An object
 * that had members deleted is slow in this engine ever after. Instead of being deleted they are set to the methods of
 * the prototype, which is the same to every caller.
 */
export function keepQuick(parser: object): void {
  const recorder = parser as Recorder;
  const start = recorder.enableRecording;
  const replaced: string[] = [];
  recorder.enableRecording = function (this: Recorder): void {
    const before = new Set(Object.keys(this));
    start.call(this);
    replaced.push(...Object.keys(this).filter((key) => !before.has(key)));
  };
  recorder.disableRecording = function (this: Recorder): void {
    this.RECORDING_PHASE = false;
    const prototype: object = Object.getPrototypeOf(this);
    Object.assign(this, Object.fromEntries(replaced.map((key) => [key, Reflect.get(prototype, key)])));
  };
}
