// From the roof to the screen and back, for one frame. Pure: sixteen numbers of a camera and a size.

import type { Ray } from "./picking";
import type { Point } from "./sight";

/** A place on the screen, px from the top left, and how far from the eye it is. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly depth: number;
}

export class Projector {
  /** `forward` is projection times view, `backward` its inverse, both by columns. */
  constructor(
    private readonly forward: ArrayLike<number>,
    private readonly backward: ArrayLike<number>,
    readonly eye: Point,
    readonly width: number,
    readonly height: number,
  ) {}

  /** Where a point is seen; null behind the eye. */
  spot([x, y, z]: Point): Spot | null {
    const m = this.forward;
    const w = m[3]! * x + m[7]! * y + m[11]! * z + m[15]!;
    if (w <= 0) return null;
    const sx = (m[0]! * x + m[4]! * y + m[8]! * z + m[12]!) / w;
    const sy = (m[1]! * x + m[5]! * y + m[9]! * z + m[13]!) / w;
    return { x: ((sx + 1) / 2) * this.width, y: ((1 - sy) / 2) * this.height, depth: w };
  }

  /** The ray from the eye through a place on the screen. */
  ray(x: number, y: number): Ray {
    const m = this.backward;
    const [sx, sy] = [(x / this.width) * 2 - 1, 1 - (y / this.height) * 2];
    const at = (row: number) => m[row]! * sx + m[row + 4]! * sy + m[row + 8]! + m[row + 12]!;
    const w = at(3);
    const way = [at(0) / w - this.eye[0], at(1) / w - this.eye[1], at(2) / w - this.eye[2]] as const;
    const size = Math.hypot(...way) || 1;
    return { from: this.eye, way: [way[0] / size, way[1] / size, way[2] / size] };
  }
}
