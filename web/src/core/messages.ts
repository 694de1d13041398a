// What passes between the page and a worker that holds a core.

import type { SceneBuffers, Paper } from "../state/session";
import type { Refusal, SideCalls } from "./bindings";

/** Where a module lies: its address, or its bytes when the page brings them with it. */
export type ModuleSource = string | ArrayBuffer;

/** Which core: that of the roof, or the one at its side that answers more. */
export interface CoreModule {
  which: "core" | "side";
  from: ModuleSource;
}

export type CallName = keyof SideCalls;

/** What is asked of the core. */
export type Ask =
  | { do: "load"; module: CoreModule }
  | { do: "call"; name: CallName; takes: string }
  | { do: "paper"; papers: ModuleSource; what: Paper };

/** What comes back: an answer, a refusal, or word that the core can't go on. */
export type Reply =
  | { is: "loaded" }
  /** `gives` is JSON: reading it on the page is quicker than having it cloned. */
  | { is: "answer"; gives: string; buffers: SceneBuffers | null }
  | { is: "paper"; bytes: Uint8Array<ArrayBuffer> }
  | { is: "refusal"; refusal: Refusal }
  /** The core's memory can't be trusted any more: it has to be started anew. */
  | { is: "broken"; why: string };

/** An ask with the number that its reply carries. */
export interface Posted<T> {
  id: number;
  body: T;
}
