import { describe, expect, it, vi } from "vitest";
import { CoreClient, type Sources } from "../../src/core/core";
import type { Ask, Posted, Reply } from "../../src/core/messages";
import { Refused } from "../../src/state/session";

type Answering = (ask: Ask) => Reply | null;

/** A worker that answers as it is told; null is silence. */
class FakeWorker extends EventTarget {
  asked: Ask[] = [];
  ended = false;
  constructor(private readonly answering: Answering) {
    super();
  }
  postMessage({ id, body }: Posted<Ask>): void {
    this.asked.push(body);
    queueMicrotask(() => {
      const reply: Reply | null = body.do === "load" ? { is: "loaded" } : this.answering(body);
      if (reply && !this.ended)
        this.dispatchEvent(new MessageEvent("message", { data: { id, body: reply } }));
    });
  }
  terminate(): void {
    this.ended = true;
  }
}

function client(...answering: Answering[]) {
  const workers: FakeWorker[] = [];
  const sources: Sources = {
    coreSource: async () => "core.wasm",
    sideSource: async () => "side.wasm",
    papersSource: async () => "papers.wasm",
    newWorker: () => {
      const worker = new FakeWorker(answering[Math.min(workers.length, answering.length - 1)]!);
      workers.push(worker);
      return worker as unknown as Worker;
    },
  };
  return { core: new CoreClient(sources, 50), workers };
}

const standing = (text: string): Reply => ({
  is: "answer",
  gives: JSON.stringify({ text, said: "", title: "Shed", overview: null, refusal: null }),
  buffers: null,
});
const calls = (worker: FakeWorker | undefined) =>
  worker?.asked.flatMap((ask) => (ask.do === "call" ? [[ask.name, JSON.parse(ask.takes)]] : []));

describe("the core", () => {
  it("is started anew when it breaks, with the settings and the job it had", async () => {
    const { core, workers } = client(
      (ask) =>
        ask.do === "call" && ask.name === "edit" ? { is: "broken", why: "unreachable" } : standing("job"),
      () => standing("job"),
    );
    await core.call("settle", { lengths: "mm", words: "us" });
    await core.call("open", { text: "job" });
    const edit = { do: "pitch", wall: null, pitch_deg: 45 } as const;
    await expect(core.call("edit", edit)).rejects.toMatchObject({ refusal: { code: "core-stopped" } });
    expect(workers[0]?.ended).toBe(true);
    await core.call("edit", edit);
    expect(calls(workers[1])).toEqual([
      ["settle", { lengths: "mm", words: "us" }],
      ["open", { text: "job" }],
      ["edit", edit],
    ]);
  });

  it("is let go of when it hangs", async () => {
    const { core, workers } = client(
      () => null,
      () => standing("job"),
    );
    await expect(core.call("open", { text: "long" })).rejects.toBeInstanceOf(Refused);
    expect(workers[0]?.ended).toBe(true);
    expect((await core.call("open", { text: "job" })).gives.text).toBe("job");
  });

  it("does not run into the same text again and again", async () => {
    const { core, workers } = client(
      () => standing("bad"),
      () => ({ is: "broken", why: "unreachable" }),
      () => standing("other"),
    );
    await core.call("open", { text: "bad" });
    workers[0]?.dispatchEvent(new Event("messageerror"));
    workers[0]!.terminate();
    await expect(core.call("shapes", null)).rejects.toBeInstanceOf(Refused);
    await expect(core.call("shapes", null)).rejects.toBeInstanceOf(Refused);
    expect((await core.call("open", { text: "other" })).gives.text).toBe("other");
    expect(calls(workers[2])).toEqual([["open", { text: "other" }]]);
  });

  it("passes a refusal on as it is", async () => {
    const refusal = { code: "pitch", what: "Too steep", remedy: "Less", faults: [] };
    const { core } = client(() => ({ is: "refusal", refusal }));
    await expect(core.call("open", { text: "job" })).rejects.toMatchObject({ refusal });
  });

  it("solves only the newest of several nudges in flight", async () => {
    const { core, workers } = client(() => standing("nudged"));
    const pitch = (pitch_deg: number) => ({ do: "pitch", wall: "A", pitch_deg }) as const;
    const answers = await Promise.all([30, 31, 32, 33].map((deg) => core.nudge(pitch(deg))));
    expect(answers.map((answer) => answer !== null)).toEqual([true, false, false, true]);
    expect(calls(workers[0])).toEqual([
      ["nudge", pitch(30)],
      ["nudge", pitch(33)],
    ]);
  });

  it("works on the page when no worker starts", async () => {
    const answer = vi.fn(async (ask: Ask): Promise<Reply> =>
      ask.do === "load" ? { is: "loaded" } : standing("job"),
    );
    vi.doMock("../../src/core/engine", () => ({
      Engine: class {
        answer = answer;
      },
    }));
    vi.resetModules();
    const { CoreClient: Fresh } = await import("../../src/core/core");
    const core = new Fresh({
      coreSource: async () => "core.wasm",
      sideSource: async () => "side.wasm",
      papersSource: async () => "papers.wasm",
      newWorker: () => {
        throw new DOMException("no workers from files", "SecurityError");
      },
    });
    expect((await core.call("open", { text: "job" })).gives.text).toBe("job");
    vi.doUnmock("../../src/core/engine");
  });
});
