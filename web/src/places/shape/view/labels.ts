// Marks of the timbers, written where the core says, the nearest first and no more than there is room for.

import type { SceneMember } from "../../../core/bindings";
import type { Crowd } from "./crowd";
import { move } from "./pins";
import type { Projector, Spot } from "./projector";

/** More marks than this are no longer read. */
const MOST = 70;
/** Height of a mark and width of one of its letters with room around, px. */
const HEIGHT = 24;
const LETTER = 10;
const AROUND = 12;
/** The chosen mark stands so far above its place, px: a short timber must not lie under it. */
const RAISED = 26;

export interface Marked {
  readonly member: SceneMember;
  /** What is written: its mark, and how far it is. */
  readonly text: string;
  readonly kind: string;
}

export class Labels {
  readonly #pool: HTMLElement[] = [];
  #marked: readonly Marked[] = [];

  constructor(private readonly layer: HTMLElement) {}

  show(marked: readonly Marked[]): void {
    this.#marked = marked;
  }

  /** Keeps the place of the chosen mark free before anything else takes it. */
  claim(view: Projector, crowd: Crowd): void {
    for (const { member, text, kind } of this.#marked) {
      const spot = kind === "chosen" ? view.spot(member.label) : null;
      if (spot) crowd.admit({ x: spot.x, y: raised(spot), width: wide(text), height: HEIGHT });
    }
  }

  place(view: Projector, crowd: Crowd): void {
    const spots: { of: Marked; spot: Spot }[] = [];
    for (const of of this.#marked) {
      const spot = view.spot(of.member.label);
      if (spot && spot.x > 0 && spot.x < view.width && spot.y > 0 && spot.y < view.height)
        spots.push({ of, spot });
    }
    spots.sort((a, b) => rank(a.of) - rank(b.of) || a.spot.depth - b.spot.depth);
    let used = 0;
    for (const { of, spot } of spots) {
      if (used === MOST) break;
      const size = { width: wide(of.text), height: HEIGHT };
      if (of.kind !== "chosen" && !crowd.admit({ x: spot.x, y: spot.y, ...size })) continue;
      this.#write(used++, of, spot);
    }
    for (let k = used; k < this.#pool.length; k++) this.#pool[k]!.hidden = true;
  }

  #write(k: number, of: Marked, spot: Spot): void {
    let element = this.#pool[k];
    if (!element) {
      element = document.createElement("span");
      this.layer.append(element);
      this.#pool.push(element);
    }
    if (element.textContent !== of.text) element.textContent = of.text;
    if (element.dataset["kind"] !== of.kind) element.dataset["kind"] = of.kind;
    element.hidden = false;
    move(element, spot.x, of.kind === "chosen" ? raised(spot) : spot.y);
  }
}

/** What is chosen goes first, then what can't take its load: a nearer mark must not hide it. */
function rank(of: Marked): number {
  return of.kind === "chosen" ? 0 : of.kind === "over" ? 1 : 2;
}

function wide(text: string): number {
  return text.length * LETTER + AROUND;
}

/** Above its place, but not over the edge of the picture. */
function raised(spot: Spot): number {
  return Math.max(spot.y - RAISED, HEIGHT);
}
