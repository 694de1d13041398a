// The offcuts that a device keeps from job to job. They lie beside the jobs, in no job: an offcut of one is timber for
// the next, never for its own.

import type { Offcut, YardRow } from "../../core/bindings";
import { app } from "../../state/app.svelte";
import type { Session } from "../../state/session";

/** Where they are kept. */
const NOTE = "yard";

export interface YardList {
  readonly rows: YardRow[];
  read(): Promise<void>;
  add(offcuts: readonly Offcut[]): Promise<void>;
  drop(number: number): Promise<void>;
  /** Puts some into the open job, and takes them off the list. */
  use(number: number): Promise<void>;
}

export function yardList(session: () => Pick<Session, "askAside" | "edit">): YardList {
  let rows = $state.raw<YardRow[]>([]);
  const kept = async () => (await app.store.note<Offcut[]>(NOTE)) ?? [];
  const show = async (offcuts: readonly Offcut[]) => {
    rows = await session().askAside("offcuts", { offcuts: [...offcuts] });
  };
  const keep = async (offcuts: readonly Offcut[]) => {
    await show(offcuts);
    await app.store.putNote(NOTE, JSON.parse(JSON.stringify(rows.map((row) => row.offcut))));
  };
  const without = (number: number) => rows.filter((_, k) => k !== number).map((row) => row.offcut);
  return {
    get rows() {
      return rows;
    },
    read: async () => show(await kept()),
    add: async (offcuts) => keep([...(await kept()), ...offcuts]),
    drop: async (number) => keep(without(number)),
    use: async (number) => {
      const row = rows[number];
      if (row && (await session().edit({ do: "yard", offcuts: [row.offcut] }))) await keep(without(number));
    },
  };
}
