import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";

export default defineConfig({
  // Relative, so that the folder works at any address.
  base: "./",
  plugins: [svelte()],
  build: { target: "es2022", assetsInlineLimit: 0 },
  worker: { format: "es" },
});
