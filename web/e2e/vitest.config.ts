import { defineConfig } from "vitest/config";

// The app as people use it: the built binary serves it, and a real browser opens it.
export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["*.test.ts"],
    // One browser and one server at a time: what is timed is timed alone.
    fileParallelism: false,
    testTimeout: 90_000,
    // Software draws the 3-D: a page may be slow to answer, and is given the time.
    expect: { poll: { timeout: 20_000 } },
    hookTimeout: 60_000,
  },
});
