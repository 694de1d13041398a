import { IDBFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { DATABASE, DATABASE_VERSION, openDatabase } from "../../src/store/database";
import {
  addJob,
  BIN_HOLDS,
  LEAST_VERSIONS,
  MOST_CHARS,
  MOST_VERSIONS,
  MovedOn,
  putVersion,
} from "../../src/store/history";
import { Store } from "../../src/store/store";

const job = { id: "a", title: "Shed", text: "v1" };
const next = (text: string) => ({ text, said: `to ${text}`, title: "Shed", glance: null });

let stores: Store[] = [];
async function opened(now?: () => number): Promise<Store> {
  const store = new Store(() => undefined, now);
  await store.open();
  stores.push(store);
  return store;
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory();
});
afterEach(() => {
  vi.restoreAllMocks();
  for (const store of stores) store.close();
  stores = [];
});

/** Makes every write of a version fail as a full device does: the transaction ends with the error. */
function fillUp() {
  return vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(() => {
    throw new DOMException("no room", "QuotaExceededError");
  });
}

describe("versions of a job", () => {
  it("goes back and forward through them, also after a reload", async () => {
    const store = await opened();
    await store.add(job);
    await store.put("a", 1, next("v2"));
    const third = await store.put("a", 2, next("v3"));
    expect([third.undoable, third.redoable]).toEqual(["to v3", null]);
    await store.step("a", 3, "back");

    const again = await (await opened()).read("a");
    expect(again.version.text).toBe("v2");
    expect([again.undoable, again.redoable]).toEqual(["to v2", "to v3"]);
    const first = await store.step("a", 2, "back");
    expect([first.version.text, first.undoable]).toEqual(["v1", null]);
    expect((await store.step("a", 1, "back")).version.text).toBe("v1");
    expect((await store.step("a", 1, "forward")).version.text).toBe("v2");
  });

  it("lets go of what was undone when something else is done, and never gives a number twice", async () => {
    const store = await opened();
    await store.add(job);
    await store.put("a", 1, next("v2"));
    await store.step("a", 2, "back");
    const other = await store.put("a", 1, next("other"));
    expect([other.version.n, other.redoable]).toEqual([3, null]);
    expect((await store.versions("a")).map((version) => version.text)).toEqual(["v1", "other"]);
  });

  it("keeps the newest when there are too many", async () => {
    const store = await opened();
    await store.add(job);
    for (let n = 1; n <= MOST_VERSIONS + 5; n += 1) await store.put("a", n, next(`v${n + 1}`));
    const kept = await store.versions("a");
    expect(kept).toHaveLength(MOST_VERSIONS);
    expect(kept.at(-1)?.text).toBe(`v${MOST_VERSIONS + 6}`);
  });

  it("keeps the last step to undo even when two texts are too long together", async () => {
    const store = await opened();
    await store.add(job);
    const long = "x".repeat(MOST_CHARS);
    await store.put("a", 1, next(long));
    await store.put("a", 2, next(long));
    expect((await store.versions("a")).map((version) => version.n)).toEqual([2, 3]);
    expect(LEAST_VERSIONS).toBe(2);
  });

  it("does not mind a clock that jumps back", async () => {
    const times = [9_000_000, 8_000_000, 10, 5, 4, 3];
    const store = await opened(() => times.shift() ?? 0);
    await store.add(job);
    await store.add({ ...job, id: "b" });
    await store.put("a", 1, next("v2"));
    await store.put("a", 2, next("v3"));
    expect((await store.read("a")).version.text).toBe("v3");
    expect((await store.step("a", 3, "back")).version.text).toBe("v2");
    expect((await store.jobs()).map((row) => row.id)).toEqual(["a", "b"]);
  });

  it("keeps all of an edit or nothing, when the page is killed in the middle", async () => {
    const store = await opened();
    await store.add(job);
    const db = await openDatabase(() => undefined);
    const killed = db.write(async (rows) => {
      await putVersion(rows, "a", 1, next("half"), 0);
      throw new Error("killed");
    });
    await expect(killed).rejects.toThrow("killed");
    db.close();
    const now = await store.read("a");
    expect([now.version.text, now.row.newest]).toEqual(["v1", 1]);
    expect(await store.versions("a")).toHaveLength(1);
  });
});

describe("two tabs", () => {
  it("do not put an edit over one they have not seen", async () => {
    const [one, two] = [await opened(), await opened()];
    await one.add(job);
    await two.put("a", 1, next("of two"));
    await expect(one.put("a", 1, next("of one"))).rejects.toBeInstanceOf(MovedOn);
    expect((await one.read("a")).version.text).toBe("of two");
    expect(one.trouble).toBeNull();
  });
});

describe("the bin", () => {
  it("gives back what was taken away, and holds only so many", async () => {
    const store = await opened();
    for (let k = 0; k <= BIN_HOLDS; k += 1) await store.add({ ...job, id: `j${k}` });
    for (let k = 0; k <= BIN_HOLDS; k += 1) await store.bin(`j${k}`);
    const left = await store.jobs();
    expect(left).toHaveLength(BIN_HOLDS);
    expect(left.some((row) => row.id === "j0")).toBe(false);
    await store.unbin("j1");
    expect((await store.jobs())[0]).toMatchObject({ id: "j1", binned: null });
    expect((await store.read("j1")).version.text).toBe("v1");
  });
});

describe("a store that fails", () => {
  it("goes on in memory when the device is full, and puts it away when there is room", async () => {
    const store = await opened();
    await store.add(job);
    await store.put("a", 1, next("v2"));
    const full = fillUp();
    const third = await store.put("a", 2, next("v3"));
    expect([store.trouble, third.version.text, third.undoable]).toEqual(["full", "v3", "to v3"]);
    expect((await store.step("a", 3, "back")).version.text).toBe("v2");
    await store.step("a", 2, "forward");
    expect(await store.retry()).toBe(false);

    full.mockRestore();
    expect(await store.retry()).toBe(true);
    expect(store.trouble).toBeNull();
    const reloaded = await (await opened()).read("a");
    expect([reloaded.version.text, reloaded.undoable]).toEqual(["v3", "to v3"]);
    expect((await store.put("a", 3, next("v4"))).version.n).toBe(4);
  });

  it("keeps drafts in memory while it is full", async () => {
    const store = await opened();
    const full = fillUp();
    await store.putNote("draft:new", { title: "half" });
    expect(await store.note("draft:new")).toEqual({ title: "half" });
    full.mockRestore();
    await store.retry();
    expect(await (await opened()).note("draft:new")).toEqual({ title: "half" });
  });

  it("works where the browser has no database", async () => {
    globalThis.indexedDB = {
      open: () => {
        throw new DOMException("blocked", "SecurityError");
      },
    } as unknown as IDBFactory;
    const store = await opened();
    await store.add(job);
    await store.put("a", 1, next("v2"));
    expect([store.trouble, (await store.read("a")).undoable]).toEqual(["blocked", "to v2"]);
    expect(await store.jobs()).toHaveLength(1);
  });

  it("leaves the database of a newer app alone", async () => {
    const newer = await openDB(DATABASE, DATABASE_VERSION + 1, {
      upgrade: (db) => void db.createObjectStore("jobs", { keyPath: "id" }),
    });
    await newer.put("jobs", { id: "theirs" });
    newer.close();
    const store = await opened();
    expect(store.trouble).toBe("newer");
    await store.add(job);
    expect(await store.retry()).toBe(false);
    const after = await openDB(DATABASE);
    expect([after.version, await after.getAllKeys("jobs")]).toEqual([DATABASE_VERSION + 1, ["theirs"]]);
    after.close();
  });

  it("makes way for a newer app in another tab", async () => {
    const store = await opened();
    await store.add(job);
    const newer = await openDB(DATABASE, DATABASE_VERSION + 1);
    expect(store.trouble).toBe("newer");
    newer.close();
  });

  it("shows the newest version when the cursor points nowhere", async () => {
    const db = await openDatabase(() => undefined);
    await db.write(async (rows) => {
      const { row } = await addJob(rows, job, 0);
      await rows.putJob({ ...row, cursor: 77 });
    });
    db.close();
    expect((await (await opened()).read("a")).version.text).toBe("v1");
  });
});
