// The strength of the open job as it was asked for last. It is worked out when somebody asks, never by itself:
// after a change it says that it is old, and waits.

import type { Refusal, StrengthView } from "../../../core/bindings";
import { Refused, type Session } from "../../../state/session";
import { tagsOf } from "./kept";

export class Asked {
  #view = $state.raw<StrengthView | null>(null);
  /** The text of the job that it was asked of. */
  #of = $state<string | null>(null);
  #refusal = $state.raw<Refusal | null>(null);
  #busy = $state(0);
  #turn = 0;

  constructor(private readonly session: Pick<Session, "standing" | "askAside">) {}

  /** Nothing was asked yet, or something else than what is there now. */
  get stale(): boolean {
    return this.#of !== null && this.#of !== (this.session.standing?.text ?? null);
  }
  get busy(): boolean {
    return this.#busy > 0;
  }
  /** What was found, unless the job has changed since. */
  get view(): StrengthView | null {
    return this.stale ? null : this.#view;
  }
  get refusal(): Refusal | null {
    return this.stale ? null : this.#refusal;
  }
  /** What is written at timbers that are over. */
  readonly tags: ReadonlyMap<string, string> = $derived(tagsOf(this.view));

  async ask(): Promise<void> {
    const turn = ++this.#turn;
    const text = this.session.standing?.text ?? null;
    this.#busy += 1;
    try {
      const view = await this.session.askAside("strength", null);
      if (turn === this.#turn) [this.#view, this.#refusal, this.#of] = [view, null, text];
    } catch (thrown) {
      if (!(thrown instanceof Refused)) throw thrown;
      if (turn === this.#turn) [this.#view, this.#refusal, this.#of] = [null, thrown.refusal, text];
    } finally {
      this.#busy -= 1;
    }
  }
}
