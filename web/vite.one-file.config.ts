// The app as one page with everything inside: dist/one-file.html, built after the app itself.

import { fileURLToPath } from "node:url";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import about from "./package.json" with { type: "json" };
import { onePage, toldModules } from "./build/plugins.ts";

const at = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
/** Everything is inlined, whatever its size. */
const ANY_SIZE = Number.MAX_SAFE_INTEGER;

export default defineConfig({
  base: "./",
  publicDir: false,
  resolve: {
    alias: [
      { find: /^.*\/core\/sources$/, replacement: at("src/core/sources.one-file.ts") },
      { find: /^.*\/service$/, replacement: at("src/state/service.one-file.ts") },
    ],
  },
  plugins: [
    svelte(),
    toldModules(),
    onePage({
      core: at("src/core/wasm/web_core_bg.wasm"),
      side: at("src/core/wasm/web_side_bg.wasm"),
      papers: at("src/core/wasm/web_papers_bg.wasm"),
    }),
  ],
  define: { __VERSION__: JSON.stringify(about.version) },
  build: {
    target: "es2022",
    assetsInlineLimit: ANY_SIZE,
    cssCodeSplit: false,
    emptyOutDir: false,
    modulePreload: false,
    rolldownOptions: { input: at("src/main.ts"), output: { codeSplitting: false } },
  },
  worker: {
    // Opened from a file, browsers start no module workers from a page's own parts, but plain ones.
    format: "iife",
    plugins: () => [toldModules()],
    rolldownOptions: { output: { codeSplitting: false } },
  },
  server: { fs: { allow: [".."] } },
});
