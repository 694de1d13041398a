// The plan that is being measured: what was drawn, how it stands, and that it is kept after every step.

import type { Refusal, Sketch, SketchPart, SketchStep, SketchView, Snap } from "../../core/bindings";
import { Refused, type Session } from "../../state/session";

const EMPTY: Sketch = {
  title: "",
  start: null,
  walls: [],
  diagonals: [],
  closed: false,
  pitch: "",
  tolerance_mm: null,
};

/** A reading of the tape: a wall or a diagonal. */
export interface Reading {
  part: Exclude<SketchPart, "corner">;
  number: number;
}

export class Sketching {
  view = $state.raw<SketchView | null>(null);
  refusal = $state.raw<Refusal | null>(null);
  /** The reading that is typed now. */
  reading = $state.raw<Reading | null>(null);
  /** A corner that was touched, for a diagonal. */
  corner = $state<number | null>(null);
  snap = $state<Snap>("square");
  #sketch: Sketch = EMPTY;
  #size: [number, number] = [0, 0];
  /** Steps are made one after the other, each on what the one before left. */
  #last: Promise<unknown> = Promise.resolve();

  constructor(readonly session: Session) {}

  get sketch(): Sketch {
    return this.view?.sketch ?? this.#sketch;
  }

  /** Goes on with what was kept, or with the open job's plan, or with nothing. */
  async begin(): Promise<void> {
    const kept = await this.session.draft();
    if (kept) this.#sketch = kept;
    else if (this.session.jobId) {
      try {
        this.#sketch = await this.session.ask("sketch_of_job", null);
      } catch (thrown) {
        this.#caught(thrown);
      }
    }
    await this.look();
  }

  /** The room that the picture has, px. */
  resize(width: number, height: number): void {
    if (width === this.#size[0] && height === this.#size[1]) return;
    this.#size = [width, height];
    if (this.view) void this.look();
  }

  look(): Promise<void> {
    return this.#turn(null);
  }

  /** One step of drawing. */
  async step(step: SketchStep): Promise<void> {
    const walls = this.sketch.walls.length;
    await this.#turn(step);
    const { view } = this;
    if (!view) return;
    const touched = view.touched;
    if (step.do === "touch" && touched?.part === "corner" && this.sketch.closed) {
      await this.#cornerTouched(touched.number);
    } else if (touched && touched.part !== "corner" && (step.do === "touch" || step.do === "diagonal")) {
      // A wall that was only now drawn is measured when the drawing is done.
      const drawn = step.do === "touch" && view.sketch.walls.length > walls;
      if (!drawn) this.reading = { part: touched.part, number: touched.number };
    }
    if (step.do === "back" || step.do === "drop_diagonal") this.reading = null;
  }

  async #cornerTouched(number: number): Promise<void> {
    const from = this.corner;
    if (from === null || from === number) {
      this.corner = from === number ? null : number;
      return;
    }
    this.corner = null;
    await this.step({ do: "diagonal", from, to: number });
  }

  /** What the tape reads, as typed. */
  async type(reading: Reading, tape: string): Promise<void> {
    const sketch = structuredClone(this.sketch);
    const line = (reading.part === "wall" ? sketch.walls : sketch.diagonals)[reading.number];
    if (!line) return;
    line.tape = tape;
    await this.#put(sketch);
  }

  async name(change: Partial<Pick<Sketch, "title" | "pitch">>): Promise<void> {
    await this.#put({ ...structuredClone(this.sketch), ...change });
  }

  /** On to the next reading that is missing, or away with the keys. */
  next(): void {
    const { view, reading } = this;
    if (!view) return;
    const open: Reading[] = [
      ...view.walls.map((line, number) => ({ part: "wall" as const, number, measured: line.measured })),
      ...view.diagonals.map((line, number) => ({
        part: "diagonal" as const,
        number,
        measured: line.measured,
      })),
    ].filter((line) => !line.measured && !(line.part === reading?.part && line.number === reading.number));
    const after = open.find((line) => line.part === reading?.part && line.number > reading.number);
    this.reading = after ?? open[0] ?? null;
  }

  async clear(): Promise<void> {
    this.reading = null;
    this.corner = null;
    await this.#put(structuredClone(EMPTY));
  }

  /** Makes the roof: a new job, or the open one over its new plan. */
  async finish(said: string): Promise<void> {
    const text = this.view?.text;
    if (!text) return;
    try {
      const whole = this.session.jobId ? await this.session.ask("sketch_into_job", this.sketch) : text;
      const drawn = this.session.keepDraft.bind(this.session);
      if (this.session.jobId) {
        if (await this.session.take(whole, said)) await drawn(null);
      } else {
        // The draft belongs to no job; it is put away before the new job is gone to.
        const kept = this.sketch;
        await drawn(null);
        if (!(await this.session.take(whole, said))) await drawn(kept);
      }
    } catch (thrown) {
      this.#caught(thrown);
    }
  }

  async #put(sketch: Sketch): Promise<void> {
    this.#sketch = sketch;
    if (this.view) this.view = { ...this.view, sketch };
    await this.#turn(null);
  }

  #turn(step: SketchStep | null): Promise<void> {
    const turn = this.#last.then(async () => {
      const [width, height] = this.#size;
      const before = this.sketch;
      try {
        const view = await this.session.ask("sketch", { sketch: before, width, height, step });
        // What was typed meanwhile is newer than this answer.
        if (!step && this.sketch !== before) return;
        this.view = view;
        this.#sketch = view.sketch;
        this.refusal = null;
        await this.session.keepDraft(view.sketch);
      } catch (thrown) {
        this.#caught(thrown);
      }
    });
    this.#last = turn;
    return turn;
  }

  #caught(thrown: unknown): void {
    if (!(thrown instanceof Refused)) throw thrown;
    this.refusal = thrown.refusal;
  }
}
