// The place of the order without a screen: what it asks and when, and what it picks out.

import { describe, expect, it } from "vitest";
import type { OrderView } from "../../src/core/bindings";
import { dayOf, entriesOf, placeOfLine, shown } from "../../src/places/order/kept";
import { Ordering } from "../../src/places/order/ordering.svelte";
import { Refused, type Session } from "../../src/state/session";

const view = (currency: string): OrderView => ({
  currency,
  figures: [],
  notes: [],
  timber: [],
  covering: {
    chosen: "",
    choices: [],
    refused: null,
    figures: [],
    slopes: [],
    lines: [],
    air: [],
    notices: [],
    sources: [],
  },
  lines: [],
  yard: [],
  lifts: [],
  notices: [],
  cautions: [],
  oldest: null,
});

/** A session that answers when it is told to. */
function slow() {
  const waiting: { done(view: OrderView): void; fail(why: unknown): void }[] = [];
  const ask = () => new Promise<OrderView>((done, fail) => waiting.push({ done, fail }));
  return { waiting, session: { askAside: ask } as unknown as Pick<Session, "askAside"> };
}

describe("the order as it was asked for", () => {
  it("stays in sight while it is asked for anew, and an answer that is overtaken is not shown", async () => {
    const { waiting, session } = slow();
    const ordering = new Ordering(session);
    const first = ordering.ask();
    expect([ordering.view, ordering.busy]).toEqual([null, true]);
    waiting[0]?.done(view("first"));
    await first;
    const second = ordering.ask();
    const third = ordering.ask();
    expect([ordering.view?.currency, ordering.busy]).toEqual(["first", true]);
    waiting[2]?.done(view("third"));
    await third;
    waiting[1]?.done(view("second"));
    await second;
    expect([ordering.view?.currency, ordering.busy]).toEqual(["third", false]);
  });

  it("says why there is none", async () => {
    const { waiting, session } = slow();
    const ordering = new Ordering(session);
    const refusal = { code: "no-order", what: "No stock", remedy: "Change the region", faults: [] };
    const asked = ordering.ask();
    waiting[0]?.fail(new Refused(refusal));
    await asked;
    expect([ordering.view, ordering.refusal, ordering.busy]).toEqual([null, refusal, false]);
  });
});

describe("what is picked out", () => {
  it("shows the part that the address names", () => {
    expect(shown(null)).toEqual({ tab: "buy", layout: null });
    expect(shown("prices")).toEqual({ tab: "prices", layout: null });
    expect(shown("cut-2-13")).toEqual({ tab: "cut", layout: "2-13" });
    expect(shown("cut-x")).toEqual({ tab: "buy", layout: null });
  });

  it("finds the line of a fault in the text", () => {
    const text = "what,price\nnails,0.5\n\nstraps,x";
    const line = (n: number) => text.slice(...placeOfLine(text, n));
    expect([line(1), line(2), line(3), line(4)]).toEqual(["what,price", "nails,0.5", "", "straps,x"]);
    expect([line(0), line(99)]).toEqual(["what,price", "straps,x"]);
  });

  it("writes days as prices are dated", () => {
    expect(dayOf(new Date(2026, 0, 5, 23, 59))).toBe("2026-01-05");
  });

  it("takes the entries of one group of keys", () => {
    const entry = (path: string) => ({ path, group: "", label: "", value: "", choices: [], said: false });
    const entries = ["order.kerf", "covering.of", "covering.head_lap", "orderly.x"].map(entry);
    expect(entriesOf(entries, "order").map((one) => one.path)).toEqual(["order.kerf"]);
    expect(entriesOf(entries, "covering", ["covering.of"]).map((one) => one.path)).toEqual([
      "covering.head_lap",
    ]);
  });
});
