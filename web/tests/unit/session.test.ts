import { IDBFactory } from "fake-indexeddb";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import type { Edit, Standing } from "../../src/core/bindings";
import type { CoreClient } from "../../src/core/core";
import { OpenSession } from "../../src/state/session.svelte";
import { Refused } from "../../src/state/session";
import { Store } from "../../src/store/store";

const standing = (text: string, said = ""): Standing => ({
  text,
  said,
  title: "Shed",
  overview: null,
  refusal: text.startsWith("faulty")
    ? {
        code: "faults",
        what: "Faulty",
        remedy: "Mend it",
        faults: [{ line: 1, column: 1, what: "", why: "", remedy: "" }],
      }
    : null,
});

/** A core whose edits add their value to the text; the value `no` is refused. */
function fakeCore(): CoreClient {
  let text = "";
  const call = async (name: string, takes: { text?: string } & Edit) => {
    if (name === "open") text = takes.text ?? "";
    else if (name === "edit" && takes.do === "set") {
      if (takes.value === "no") throw new Refused({ code: "no", what: "No", remedy: "Yes", faults: [] });
      text = `${text}+${takes.value}`;
    }
    return { gives: standing(text, name === "edit" ? `set ${text}` : ""), buffers: null };
  };
  return { call } as unknown as CoreClient;
}
const set = (value: string): Edit => ({ do: "set", path: "roof.pitch", value });

let stores: Store[] = [];
async function tab() {
  const store = new Store();
  await store.open();
  stores.push(store);
  return new OpenSession(fakeCore(), store, { kept: () => undefined, made: () => undefined });
}
beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  for (const store of stores) store.close();
  stores = [];
});

describe("the open job", () => {
  it("has an edit on the disk when the edit resolves", async () => {
    const one = await tab();
    const id = (await one.create("job"))!;
    expect(await one.edit(set("45"))).toBe(true);
    const two = await tab();
    await two.openJob(id);
    expect([two.text, two.undoable]).toEqual(["job+45", "set job+45"]);
    await two.undo();
    expect([two.text, two.redoable]).toEqual(["job", "set job+45"]);
    await two.redo();
    expect(two.standing?.text).toBe("job+45");
  });

  it("makes an edit again on what another tab kept, so that neither is lost", async () => {
    const [one, two] = [await tab(), await tab()];
    const id = (await one.create("job"))!;
    await two.openJob(id);
    await two.edit(set("of-two"));
    expect(await one.edit(set("of-one"))).toBe(true);
    expect(one.text).toBe("job+of-two+of-one");
    await two.follow(id);
    expect(two.standing?.text).toBe("job+of-two+of-one");
  });

  it("stays as it was when an edit is refused", async () => {
    const one = await tab();
    await one.create("job");
    expect(await one.edit(set("no"))).toBe(false);
    expect([one.text, one.undoable, one.refusal?.remedy]).toEqual(["job", null, "Yes"]);
  });

  it("lets no faulty text onto the shelf or over a job", async () => {
    const one = await tab();
    expect(await one.create("faulty")).toBeNull();
    expect(await stores[0]!.jobs()).toHaveLength(0);
    await one.create("job");
    expect(await one.replace("faulty", "text")).toBe(false);
    expect([one.text, one.refusal?.code]).toEqual(["job", "faults"]);
    expect(await one.edit(set("45"))).toBe(true);
    expect(one.text).toBe("job+45");
  });

  it("makes one text of two sides as the user chose", async () => {
    const one = await tab();
    await one.create("ours");
    const clash = (path: string, ours: string) => ({ path, words: path, base: null, ours, theirs: "t" });
    const sides = {
      revision: 3,
      theirs: "theirs",
      merged: "merged",
      clashes: [clash("a", "1"), clash("b", "2")],
    };
    expect(await one.settleClash(sides, [false, true])).toBe(true);
    expect(one.text).toBe("merged+2");
    await one.undo();
    expect(one.text).toBe("ours");
  });
});
