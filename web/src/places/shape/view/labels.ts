// Marks of the timbers, written where the core says, the nearest first and no more than there is room for.

import type { SceneMember } from "../../../core/bindings";
import type { Crowd } from "./crowd";
import { move } from "./pins";
import type { Projector, Spot } from "./projector";

/** More marks than this are no longer read. */
const MOST = 70;
/** One mark that is over for so much width, px, goes before the letters of walls: more would cover the roof. */
const ROOM_OVER = 180;
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
  /** What has its place already. */
  readonly #claimed = new Set<Marked>();

  constructor(private readonly layer: HTMLElement) {}

  show(marked: readonly Marked[]): void {
    this.#marked = marked;
  }

  /** Keeps the places of the chosen mark and of those that are over free before anything else takes them. */
  claim(view: Projector, crowd: Crowd): void {
    this.#claimed.clear();
    for (const of of this.#marked) {
      const spot = of.kind === "chosen" ? view.spot(of.member.label) : null;
      if (spot) crowd.admit({ x: spot.x, y: raised(spot), width: wide(of.text), height: HEIGHT });
    }
    const most = Math.floor(view.width / ROOM_OVER);
    for (const of of this.#marked) {
      if (of.kind !== "over" || this.#claimed.size >= most) continue;
      const spot = view.spot(of.member.label);
      if (spot && crowd.admit({ x: spot.x, y: spot.y, width: wide(of.text), height: HEIGHT }))
        this.#claimed.add(of);
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
      if (of.kind !== "chosen" && !this.#claimed.has(of) && !crowd.admit({ x: spot.x, y: spot.y, ...size }))
        continue;
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
