import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import about from "./package.json" with { type: "json" };

export default defineConfig({
  // Relative, so that the folder works at any address.
  base: "./",
  plugins: [svelte()],
  define: { __VERSION__: JSON.stringify(about.version) },
  build: { target: "es2022", assetsInlineLimit: 0 },
  worker: { format: "es" },
  // The example job lies beside the web folder.
  server: { fs: { allow: [".."] } },
});
