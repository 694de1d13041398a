// What every place of the app gets to work with: the open job and what can be done to it.
// Places show what the session holds and ask it for changes; they compute nothing and store nothing.

//
// A place is the component `places/NAME/Name.svelte` (`places/shape/Shape.svelte`), loaded when it is gone
// to, with `Place` as its props. `route.detail` of state/route.svelte.ts is what it shows, `go("job",
// session.jobId, "bench", "J3")` goes somewhere. Words come from `t(key)` of ../words.

import type { Calls, Edit, Nudge, Refusal, SideCalls, Sketch, Standing } from "../core/bindings";

/** What every place is given. */
export interface Place {
  session: Session;
}

/** The plain numbers of the 3-D view: three to a point, mm, x east, y north, z up. See `Scene` of the bindings. */
export interface SceneBuffers {
  /** Triangles of all timbers. */
  timbers: Float32Array;
  /** Arrises of all timbers, two points each. */
  arrises: Float32Array;
  /** Triangles of the slopes. */
  slopes: Float32Array;
}

/** The open job. Its fields are reactive ($state): a place reads them and is drawn again when they change. */
export interface Session {
  /** Which job is open; null when none is. */
  readonly jobId: string | null;
  /** How it stands. */
  readonly standing: Standing | null;
  /** Its scene; belongs to `standing.overview.scene`, or to `nudged` while a finger drags. */
  readonly buffers: SceneBuffers | null;
  /** How the roof would be, while a finger drags; null otherwise. */
  readonly nudged: Standing | null;
  /** Why the last thing asked for was not done; shown until it is put away. */
  readonly refusal: Refusal | null;
  /** What undo and redo would do, a phrase; null when there is nothing to undo. */
  readonly undoable: string | null;
  readonly redoable: string | null;

  /** Changes the job; keeps the new text before it resolves. False when it was refused (see `refusal`). */
  edit(edit: Edit): Promise<boolean>;
  /** Shows the roof as it would be. Only the newest of several in flight is solved. */
  nudge(nudge: Nudge): Promise<void>;
  /** Puts back what `nudge` showed. */
  letGo(): void;
  undo(): Promise<void>;
  redo(): Promise<void>;
  /** Any call of the core that changes nothing. Rejects with a `Refused`. */
  ask<K extends keyof Calls>(name: K, takes: Calls[K][0]): Promise<Calls[K][1]>;
  /** As `ask`, of the core at the side, in a worker of its own: for what takes long, so that the roof never waits for it. */
  askAside<K extends keyof SideCalls>(name: K, takes: SideCalls[K][0]): Promise<SideCalls[K][1]>;
  /** A paper as bytes: the pack or one card as PDF, the list of timbers as CSV. Rejects with a `Refused`. */
  paper(what: Paper): Promise<Uint8Array<ArrayBuffer>>;
  /** The half-finished plan of the open job (or of no job yet), as it was kept last. */
  draft(): Promise<Sketch | null>;
  /** Keeps a half-finished plan; null when it is done with. */
  keepDraft(sketch: Sketch | null): Promise<void>;
  /**
   * Takes in a whole text, a plan that is measured: it becomes the open job's next version, or a new job
   * if none is open, which is then gone to. False when it was refused.
   */
  take(text: string, said: string): Promise<boolean>;
  putAway(): void;
}

/** A paper that can be printed or saved. */
export type Paper = { paper: "pack" } | { paper: "card"; mark: string } | { paper: "list" };

/** What a call rejects with. */
export class Refused extends Error {
  constructor(readonly refusal: Refusal) {
    super(refusal.what);
  }
}
