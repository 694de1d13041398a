import { defineConfig } from "vitest/config";

// The app as people use it: the built binary serves it, and a real browser opens it.
export default defineConfig({
  test: {
    root: import.meta.dirname,
    include: ["*.test.ts"],
    // One browser and one server at a time: what is timed is timed alone.
    fileParallelism: false,
    testTimeout: 60_000,
    hookTimeout: 60_000,
  },
});
