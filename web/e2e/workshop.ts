// The built binary, started as a workshop server with an empty store of its own.

import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const ROOT = join(import.meta.dirname, "../..");
export const SEATCUT = join(process.env["CARGO_TARGET_DIR"] ?? join(ROOT, "target"), "release/seatcut");

/** How long a server may take to say its address, ms: certificates are made on the first start. */
const START = 20_000;

/** What the command line prints for the same job. */
export function seatcut(...args: string[]): string {
  return execFileSync(SEATCUT, args, { encoding: "utf8", maxBuffer: 1 << 28, cwd: ROOT });
}

export interface Workshop {
  /** `http://127.0.0.1:…/` */
  address: string;
  port: number;
  data: string;
  /** What the server has printed so far. */
  said(): string;
  stop(signal?: NodeJS.Signals): Promise<void>;
  /** Stops it, and forgets its store. */
  clear(): Promise<void>;
}

/** A port that nothing listens on, with the next one free for phones as far as can be told. */
async function freePort(): Promise<number> {
  return new Promise((found, failed) => {
    const door = createServer();
    door.on("error", failed);
    door.listen(0, "127.0.0.1", () => {
      const address = door.address();
      door.close(() =>
        typeof address === "object" && address ? found(address.port) : failed(new Error("no port")),
      );
    });
  });
}

export async function workshop(
  options: { data?: string; port?: number; args?: string[] } = {},
): Promise<Workshop> {
  const data = options.data ?? mkdtempSync(join(tmpdir(), "seatcut-e2e-"));
  const port = String(options.port ?? (await freePort()));
  const server: ChildProcess = spawn(
    SEATCUT,
    ["serve", "--port", port, "--data", data, ...(options.args ?? [])],
    {
      stdio: ["ignore", "pipe", "pipe"],
    },
  );
  let said = "";
  const address = await new Promise<string>((found, failed) => {
    const late = setTimeout(() => failed(new Error(`no address within ${START} ms:\n${said}`)), START);
    const hear = (chunk: Buffer) => {
      said += chunk.toString();
      const match = /https?:\/\/(?:127\.0\.0\.1|localhost):\d+\/?/.exec(said);
      if (match) {
        clearTimeout(late);
        found(match[0].replace(/\/?$/, "/"));
      }
    };
    server.stdout?.on("data", hear);
    server.stderr?.on("data", hear);
    server.on("exit", (code) => failed(new Error(`the server stopped with ${code}:\n${said}`)));
  });
  const stop = async (signal: NodeJS.Signals = "SIGTERM") => {
    if (server.exitCode !== null || server.signalCode !== null) return;
    const gone = new Promise((done) => server.once("exit", done));
    server.kill(signal);
    await gone;
  };
  const clear = async () => {
    await stop("SIGKILL");
    rmSync(data, { recursive: true, force: true });
  };
  return { address, port: Number(port), data, said: () => said, stop, clear };
}
