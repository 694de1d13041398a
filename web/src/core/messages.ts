// What passes between the page and the worker that holds the core.

import type { SceneBuffers, Paper } from "../state/session";
import type { Calls, Refusal, Settings } from "./bindings";

/** Where a module lies: its address, or its bytes when the page brings them with it. */
export type ModuleSource = string | ArrayBuffer;

export type CallName = keyof Calls;

/** What is asked of the core. */
export type Ask =
  | { do: "load"; core: ModuleSource }
  | { do: "call"; name: CallName; takes: string }
  | { do: "paper"; papers: ModuleSource; what: Paper; text: string; settings: Settings };

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
