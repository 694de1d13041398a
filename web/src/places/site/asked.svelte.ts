// An answer of the core that belongs to the job as it is. What was found before stays in sight while it is asked anew.

import { untrack } from "svelte";
import type { Refusal, SideCalls } from "../../core/bindings";
import { Refused, type Session } from "../../state/session";
import { settings } from "../../state/settings.svelte";

type Named = "site_steps" | "site_lifts" | "site_programme" | "site_access" | "site_records" | "site_picture";

export class Asked<K extends Named> {
  #view = $state.raw<SideCalls[K][1] | null>(null);
  #refusal = $state.raw<Refusal | null>(null);
  #busy = $state(0);
  #turn = 0;

  /** Asks at once, and again whenever the job, the words or what is asked for change; not while `takes` gives nothing. */
  constructor(
    private readonly session: Session,
    private readonly name: K,
    takes: () => SideCalls[K][0] | undefined,
  ) {
    $effect(() => {
      void [session.standing?.text, settings.words, settings.lengths];
      const now = takes();
      if (now !== undefined) untrack(() => void this.#ask(now));
    });
  }

  get view(): SideCalls[K][1] | null {
    return this.#view;
  }
  get refusal(): Refusal | null {
    return this.#refusal;
  }
  get busy(): boolean {
    return this.#busy > 0;
  }

  async #ask(takes: SideCalls[K][0]): Promise<void> {
    const turn = ++this.#turn;
    this.#busy += 1;
    try {
      const view = await this.session.askAside(this.name, takes);
      if (turn === this.#turn) [this.#view, this.#refusal] = [view, null];
    } catch (thrown) {
      if (!(thrown instanceof Refused)) throw thrown;
      if (turn === this.#turn) [this.#view, this.#refusal] = [null, thrown.refusal];
    } finally {
      this.#busy -= 1;
    }
  }
}
