// Thins out what stands too close on the screen. Pure.

export interface Sized {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The screen is kept in squares of this many px to find neighbours fast. */
const SQUARE = 64;

/** Keeps things in the order in which they ask, unless they overlap one that was kept before. */
export class Crowd {
  readonly #squares = new Map<number, Sized[]>();

  /** Whether there was room; `x`, `y` is the middle. */
  admit(thing: Sized): boolean {
    const keys = this.#keys(thing);
    for (const key of keys) {
      for (const other of this.#squares.get(key) ?? []) if (overlap(thing, other)) return false;
    }
    for (const key of keys) {
      const there = this.#squares.get(key);
      if (there) there.push(thing);
      else this.#squares.set(key, [thing]);
    }
    return true;
  }

  #keys({ x, y, width, height }: Sized): number[] {
    const keys: number[] = [];
    const column = (at: number) => Math.floor(at / SQUARE);
    for (let i = column(x - width / 2); i <= column(x + width / 2); i++) {
      for (let j = column(y - height / 2); j <= column(y + height / 2); j++) keys.push(i * 4096 + j);
    }
    return keys;
  }
}

function overlap(a: Sized, b: Sized): boolean {
  return Math.abs(a.x - b.x) * 2 < a.width + b.width && Math.abs(a.y - b.y) * 2 < a.height + b.height;
}
