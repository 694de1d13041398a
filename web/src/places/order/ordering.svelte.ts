// The order of the open job, asked for anew when the job has changed. What was found before stays in sight meanwhile.

import type { OrderView, Refusal } from "../../core/bindings";
import { Refused, type Session } from "../../state/session";

export class Ordering {
  #view = $state.raw<OrderView | null>(null);
  #refusal = $state.raw<Refusal | null>(null);
  #busy = $state(0);
  #turn = 0;

  constructor(private readonly session: Pick<Session, "askAside">) {}

  get view(): OrderView | null {
    return this.#view;
  }
  get refusal(): Refusal | null {
    return this.#refusal;
  }
  get busy(): boolean {
    return this.#busy > 0;
  }

  async ask(): Promise<void> {
    const turn = ++this.#turn;
    this.#busy += 1;
    try {
      const view = await this.session.askAside("order", null);
      if (turn === this.#turn) [this.#view, this.#refusal] = [view, null];
    } catch (thrown) {
      if (!(thrown instanceof Refused)) throw thrown;
      if (turn === this.#turn) [this.#view, this.#refusal] = [null, thrown.refusal];
    } finally {
      this.#busy -= 1;
    }
  }
}
