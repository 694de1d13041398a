import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

export default defineConfig({
  plugins: [svelte()],
  define: { __VERSION__: JSON.stringify("test") },
  test: { include: ["tests/unit/**/*.test.ts"], setupFiles: ["tests/unit/browser.ts"] },
});
