import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import about from "./package.json" with { type: "json" };
import { contentPolicy, toldModules } from "./build/plugins.ts";

/** Largest file that is kept for use with no network, bytes: the core with room to grow. */
const LARGEST_KEPT = 8 << 20;

export default defineConfig({
  // Relative, so that the folder works at any address.
  base: "./",
  plugins: [
    svelte(),
    toldModules(),
    contentPolicy(),
    VitePWA({
      // Registered by src/state/service.ts: no inline script, and never a reload while an edit is kept.
      injectRegister: false,
      registerType: "prompt",
      manifest: {
        name: "Seatcut",
        short_name: "Seatcut",
        description:
          "Cut roofs from the wall plates up: true lengths, every bevel, birdsmouths, sheets for the bench.",
        start_url: "./",
        scope: "./",
        display: "standalone",
        background_color: "#f4f1ea",
        theme_color: "#ead9b8",
        icons: [
          { src: "icons/seatcut.svg", sizes: "any", type: "image/svg+xml" },
          { src: "icons/seatcut-192.png", sizes: "192x192", type: "image/png" },
          { src: "icons/seatcut-512.png", sizes: "512x512", type: "image/png" },
          { src: "icons/seatcut-mask-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,wasm,svg,png,webmanifest,woff2}"],
        // Fetched in idle time after the first load; see src/state/service.ts.
        globIgnores: ["one-file.html", "**/web_{side,papers}*.wasm"],
        maximumFileSizeToCacheInBytes: LARGEST_KEPT,
        // All rooms are one address; other pages of a server are its own.
        navigateFallback: null,
        clientsClaim: true,
        skipWaiting: false,
        cleanupOutdatedCaches: true,
        inlineWorkboxRuntime: true,
        runtimeCaching: [
          {
            urlPattern: /\/web_(side|papers)[^/]*\.(wasm|js)$/,
            handler: "CacheFirst",
            // Packed or not, it is the same file.
            options: {
              cacheName: "later",
              // Two of each version: the one in use, and the one that waits.
              expiration: { maxEntries: 4 },
              matchOptions: { ignoreVary: true },
            },
          },
          {
            urlPattern: /\/one-file\.html$/,
            handler: "NetworkFirst",
            options: { cacheName: "one-file", networkTimeoutSeconds: 5, matchOptions: { ignoreVary: true } },
          },
        ],
      },
    }),
  ],
  define: { __VERSION__: JSON.stringify(about.version) },
  build: { target: "es2022", assetsInlineLimit: 0 },
  worker: { format: "es", plugins: () => [toldModules()] },
  // The example job lies beside the web folder.
  server: { fs: { allow: [".."] } },
});
