// The strength panel without a screen: when it asks, when it says that what it has is old, what it picks out.

import { describe, expect, it } from "vitest";
import type { StrengthRow, StrengthView, Standing } from "../../src/core/bindings";
import { Asked } from "../../src/places/shape/strength/asked.svelte";
import { entriesOf, given, ofStrength, tagsOf } from "../../src/places/shape/strength/kept";
import { Refused, type Session } from "../../src/state/session";

const row = (mark: string, tag: string | null, lengths = [mark]): StrengthRow => ({
  mark,
  lengths,
  kind: "Purlin",
  size: "75 × 225 mm",
  check: "shear",
  clause: "6.1.7",
  combination: "own weight alone",
  used: "50 % used",
  left: "50 % left",
  verdict: tag === null ? "within" : "over",
  word: tag === null ? "Within" : "Over",
  would_pass: null,
  tag,
});
const checked = (timbers: StrengthRow[]): StrengthView => ({
  state: "checked",
  summary: [],
  timbers,
  joints: [],
  engineer: [],
  assumed: [],
  cautions: [],
});

/** A session whose job can be changed, and that counts how often strength was asked for. */
function fake(answer: () => StrengthView) {
  const session = {
    text: "one",
    asked: 0,
    get standing() {
      return { text: this.text } as Standing;
    },
    async askAside() {
      this.asked += 1;
      return answer();
    },
  };
  return session as typeof session & Pick<Session, "standing" | "askAside">;
}

describe("strength as it was asked for", () => {
  it("is asked once and is old when the job has changed, without asking by itself", async () => {
    const session = fake(() => checked([row("P1", "over, 120 %")]));
    const asked = new Asked(session);
    expect([asked.view, asked.stale]).toEqual([null, false]);
    await asked.ask();
    expect(asked.view?.state).toBe("checked");
    session.text = "two";
    expect([asked.view, asked.stale, session.asked]).toEqual([null, true, 1]);
    await asked.ask();
    expect([asked.stale, session.asked]).toEqual([false, 2]);
  });

  it("keeps why the core refused", async () => {
    const refusal = { code: "no-strength", what: "No codes", remedy: "Change the region", faults: [] };
    const asked = new Asked(
      fake(() => {
        throw new Refused(refusal);
      }),
    );
    await asked.ask();
    expect([asked.view, asked.refusal, asked.busy]).toEqual([null, refusal, false]);
  });
});

describe("what is picked out", () => {
  it("tags every length of a timber that is over, and no other", () => {
    const tags = tagsOf(checked([row("Hip-1", "over, 120 %", ["Hip-1a", "Hip-1b"]), row("P1", null)]));
    expect([...tags]).toEqual([
      ["Hip-1a", "over, 120 %"],
      ["Hip-1b", "over, 120 %"],
    ]);
    expect(tagsOf(null).size + tagsOf({ state: "not_asked", words: "", fields: [] }).size).toBe(0);
  });

  it("sends what was typed and of the rest what stood there", () => {
    const field = (path: string, value: string) => ({ path, value, label: "", hint: "", choices: [] });
    const fields = [field("loads.wind", ""), field("strength.class", "C16")];
    expect(given(fields, { "loads.wind": " 0.9 " })).toEqual([
      { path: "loads.wind", value: "0.9" },
      { path: "strength.class", value: "C16" },
    ]);
  });

  it("lets the needed figures be set but not be taken out", () => {
    const entry = (path: string) => ({ path, group: "", label: "", value: "1", choices: [], said: true });
    const entries = entriesOf(["roof.pitch", "loads.wind", "loads.lining"].map(entry));
    expect(entries.map(({ path, said }) => [path, said])).toEqual([
      ["loads.wind", false],
      ["loads.lining", true],
    ]);
    expect(ofStrength("timber.rafter.size")).toBe(false);
  });
});
