// Small steps of our own in the build.

import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import type { Plugin } from "vite";

/** What the page may do when it is served from a folder: nothing but what lies there. */
export const POLICY = {
  "default-src": "'self'",
  "script-src": "'self' 'wasm-unsafe-eval'",
  "style-src": "'self'",
  "img-src": "'self' blob: data:",
  "font-src": "'self'",
  "connect-src": "'self'",
  "worker-src": "'self'",
  "frame-src": "blob:",
  "object-src": "'none'",
  "base-uri": "'none'",
  "form-action": "'none'",
};

export const policyTag = (policy: Record<string, string>): string =>
  `<meta http-equiv="Content-Security-Policy" content="${Object.entries(policy)
    .map(([what, from]) => `${what} ${from}`)
    .join("; ")}" />`;

/** Puts the policy into the built page; while it is worked on, Vite itself needs inline styles. */
export function contentPolicy(): Plugin {
  return {
    name: "content-policy",
    apply: "build",
    transformIndexHtml: (html) => html.replace("<head>", `<head>\n    ${policyTag(POLICY)}`),
  };
}

/** The page says where the modules of the core are; what their scripts guess would pack them twice. */
export function toldModules(): Plugin {
  return {
    name: "told-modules",
    transform: (code, id) =>
      /\/wasm\/web_(core|side|papers)\.js$/.test(id)
        ? code.replace(/new URL\('web_\w+_bg\.wasm', import\.meta\.url\)/, "undefined")
        : null,
  };
}

/** In a script inside a page nothing may end the element, nor start another. */
const inScript = (code: string): string => code.replace(/<(\/?script)/gi, "\\x3C$1");

/** Vite's note of what to fetch ahead of a part that comes later; here nothing comes later. */
const withoutPreload = (code: string): string => code.replaceAll("__VITE_PRELOAD__", "void 0");

const hashed = (content: string): string =>
  `'sha256-${createHash("sha256").update(content).digest("base64")}'`;

const packed = (path: string): string => gzipSync(readFileSync(path), { level: 9 }).toString("base64");

/** Turns the bundle into one page that holds all: styles, script, worker, the modules of the core. */
export function onePage(modules: Record<"core" | "side" | "papers", string>): Plugin {
  return {
    name: "one-page",
    enforce: "post",
    generateBundle(_options, bundle) {
      let script = "";
      let style = "";
      for (const [name, part] of Object.entries(bundle)) {
        if (part.type === "chunk" && part.isEntry)
          script = inScript(`\n${withoutPreload(part.code).trim()}\n`);
        else if (part.type === "asset" && name.endsWith(".css")) style += String(part.source);
        delete bundle[name];
      }
      const policy = policyTag({
        ...POLICY,
        "default-src": "'none'",
        "script-src": `${hashed(script)} 'wasm-unsafe-eval'`,
        "style-src": hashed(style),
        "img-src": "blob: data:",
        "font-src": "data:",
        // The worker is a part of the page's own script.
        "worker-src": "blob: data:",
        "connect-src": "'none'",
      });
      const module = (id: "core" | "side" | "papers") =>
        `<script type="application/octet-stream" id="module-${id}">${packed(modules[id])}</script>`;
      this.emitFile({
        type: "asset",
        fileName: "one-file.html",
        source: `<!doctype html>
<html lang="en"><head><meta charset="utf-8" />
${policy}
<meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover" />
<meta name="color-scheme" content="light dark" />
<title>Seatcut</title>
<style>${style}</style></head>
<body><div id="app"></div>
<script type="application/toml" id="job"></script>
${module("core")}
${module("side")}
${module("papers")}
<script type="module">${script}</script>
</body></html>
`,
      });
    },
  };
}
