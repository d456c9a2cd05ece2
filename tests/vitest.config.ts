import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    root: new URL("..", import.meta.url).pathname,
    include: ["tests/**/*.test.ts"],
    benchmark: { include: ["tests/bench/**/*.bench.ts"] },
    setupFiles: ["tests/helpers/setup.ts"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: "100%",
    // Modules have no state (tests/arch/habits), so files may share them: loading them anew took a third of the time.
    isolate: false,
    // Sources are loaded by Node itself: what the benches time is then what users run.
    execArgv: [
      "--enable-source-maps",
      "--import",
      new URL("helpers/typescript-loader.mjs", import.meta.url).href,
    ],
    experimental: { viteModuleRunner: false, nodeLoader: false },
  },
});
