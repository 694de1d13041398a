// The colours of the 3-D view, read from the theme's CSS variables. The theme is the only place that knows them.

export type Rgb = readonly [number, number, number];

export interface Palette {
  ground: Rgb;
  line: Rgb;
  text: Rgb;
  wood: Rgb;
  sawn: Rgb;
  slope: Rgb;
  /** Arrises: the theme's edge or its ground, whichever is darker, so that wood keeps its colour between them. */
  edge: Rgb;
  chosen: Rgb;
  wrong: Rgb;
  good: Rgb;
}

/** Reads the theme that holds at an element. */
export function read(at: Element): Palette {
  const style = getComputedStyle(at);
  const get = (name: string) => parse(style.getPropertyValue(name));
  const [ground, edge] = [get("--ground"), get("--edge")];
  return {
    ground,
    line: get("--line"),
    text: get("--text"),
    wood: get("--wood"),
    sawn: get("--sawn"),
    slope: get("--slope"),
    edge: brightness(edge) < brightness(ground) ? edge : ground,
    chosen: get("--chosen"),
    wrong: get("--wrong"),
    good: get("--good"),
  };
}

/** `#rrggbb` or `#rgb` as bytes; black for what is no colour. */
export function parse(css: string): Rgb {
  const hex = css.trim().replace(/^#/, "");
  const full = hex.length === 3 ? hex.replace(/./g, "$&$&") : hex;
  const value = Number.parseInt(full, 16);
  if (full.length !== 6 || Number.isNaN(value)) return [0, 0, 0];
  return [value >> 16, (value >> 8) & 255, value & 255];
}

/** How bright a colour is to the eye, 0 to 255. */
export function brightness([r, g, b]: Rgb): number {
  return 0.3 * r + 0.59 * g + 0.11 * b;
}

/** From one colour towards another, `t` from 0 to 1. */
export function mix(a: Rgb, b: Rgb, t: number): Rgb {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t, a[2] + (b[2] - a[2]) * t];
}

/** Lighter (above 1) or darker. */
export function shade(colour: Rgb, by: number): Rgb {
  return [Math.min(255, colour[0] * by), Math.min(255, colour[1] * by), Math.min(255, colour[2] * by)];
}

/** Red, green, blue and alpha (0 to 1) as the four bytes of a word, in the order that the graphics card reads. */
export function word(colour: Rgb, alpha: number): number {
  const byte = (value: number) => Math.round(Math.min(255, Math.max(0, value)));
  return (
    ((byte(alpha * 255) << 24) | (byte(colour[2]) << 16) | (byte(colour[1]) << 8) | byte(colour[0])) >>> 0
  );
}

/** As three.js takes it. */
export function hex(colour: Rgb): number {
  return (Math.round(colour[0]) << 16) | (Math.round(colour[1]) << 8) | Math.round(colour[2]);
}

/** Calls when the theme changes: by the app's setting or by the device. Gives back how to stop. */
export function watch(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, {
    attributes: true,
    attributeFilter: ["data-theme", "class", "style"],
  });
  const dark = matchMedia("(prefers-color-scheme: dark)");
  dark.addEventListener("change", changed);
  return () => {
    observer.disconnect();
    dark.removeEventListener("change", changed);
  };
}
