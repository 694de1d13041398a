// What each timber looks like: solid, see-through or hidden, and in which colour. Pure, by ranges of the buffers.

import type { Done, Run, SceneMember } from "../../../core/bindings";
import { mix, shade, word, type Palette, type Rgb } from "./palette";

/** What of the roof is asked to be seen. */
export interface Look {
  /** The timber that is chosen; its neighbours stay, the others fade. */
  readonly timber: string | null;
  /** The wall whose slope is chosen. */
  readonly wall: string | null;
  /** The layers that are shown. */
  readonly layers: ReadonlySet<string>;
  readonly slopes: boolean;
  readonly marks: boolean;
  /** Cut and fixed timbers told apart. */
  readonly progress: boolean;
}

/** How far the timber of a mark is. */
export interface Stage {
  readonly done: Done;
  readonly changed: boolean;
}

export type Presence = "solid" | "faded" | "hidden";

export interface Tint {
  readonly presence: Presence;
  /** Faces, as a word of bytes. */
  readonly face: number;
  /** Arrises, as a word of bytes; 0 is not drawn. */
  readonly edge: number;
}

/** See-through, but still to be found. */
const FADED_FACE = 0.1;
const FADED_EDGE = 0.22;
/** What is not cut yet, when progress is shown. */
const PENDING_FACE = 0.16;
const PENDING_EDGE = 0.5;
/** No two pieces of timber are of one colour; this much lighter or darker. */
const GRAIN = 0.045;

const HIDDEN: Tint = { presence: "hidden", face: 0, edge: 0 };

/** How a timber looks. */
export function tint(
  member: SceneMember,
  order: number,
  stage: Stage | undefined,
  kept: ReadonlySet<string> | null,
  look: Look,
  palette: Palette,
): Tint {
  const chosen = member.mark === look.timber;
  if (!chosen && !look.layers.has(member.layer)) return HIDDEN;
  const solid = (face: Rgb, edge: Rgb, alpha = 1): Tint => ({
    presence: "solid",
    face: word(face, 1),
    edge: word(edge, alpha),
  });
  if (chosen) return solid(mix(palette.chosen, palette.wood, 0.12), palette.edge);
  const wood = shade(ofLayer(member.layer, palette), 1 + GRAIN * grain(order));
  if (kept && !kept.has(member.mark)) {
    return { presence: "faded", face: word(wood, FADED_FACE), edge: word(palette.edge, FADED_EDGE) };
  }
  if (!look.progress) return solid(wood, palette.edge, 0.85);
  if (stage?.changed) return solid(mix(palette.wrong, palette.wood, 0.25), palette.wrong);
  if (stage?.done === "fixed") return solid(mix(palette.good, palette.wood, 0.15), palette.edge);
  if (stage?.done === "cut") return solid(mix(palette.good, palette.wood, 0.72), palette.good);
  return { presence: "faded", face: word(wood, PENDING_FACE), edge: word(palette.edge, PENDING_EDGE) };
}

/** Timbers of the frame are told apart a little by what they do. */
function ofLayer(layer: string, { wood, sawn }: Palette): Rgb {
  if (layer === "plates") return mix(wood, sawn, 1.4);
  if (layer === "ridges") return mix(wood, sawn, 1.2);
  if (layer === "edges") return mix(wood, sawn, 0.95);
  if (layer === "inside") return mix(wood, sawn, 0.4);
  return mix(wood, sawn, 0.75);
}

/** Between -1 and 1, scattered but always the same for the same timber. */
function grain(order: number): number {
  return ((order * 7919 + 13) % 97) / 48 - 1;
}

/** The marks that stay when a timber is chosen: its own and its neighbours'. */
export function keptMarks(
  members: readonly SceneMember[],
  chosen: string | null,
): ReadonlySet<string> | null {
  const member = chosen === null ? undefined : members.find((m) => m.mark === chosen);
  return member ? new Set([member.mark, ...member.neighbours]) : null;
}

/** Writes one word to every point of a run. */
export function paint(words: Uint32Array, run: Run, value: number): void {
  words.fill(value, run.first, run.first + run.count);
}

/** Writes one word to every arris of a run: an arris is two points of the buffer. */
export function paintPairs(words: Uint32Array, run: Run, value: number): void {
  words.fill(value, run.first >> 1, (run.first + run.count) >> 1);
}

/** Numbers of the points to draw, of the runs whose timbers have a presence. Gives how many. */
export function gather(
  into: Uint32Array,
  runs: readonly { readonly triangles: Run }[],
  tints: readonly Tint[],
  presence: Presence,
): number {
  let n = 0;
  runs.forEach(({ triangles }, k) => {
    if (tints[k]?.presence !== presence) return;
    for (let i = triangles.first; i < triangles.first + triangles.count; i++) into[n++] = i;
  });
  return n;
}
