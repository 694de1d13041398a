// Where in the app the user is. The address after the `#` says it, so the browser's Back works.

/** `#/`, `#/new`, `#/settings`, `#/job/ID/bench/J3` … as its parts. */
function parts(): string[] {
  return location.hash
    .replace(/^#\/?/, "")
    .split("/")
    .filter((part) => part !== "")
    .map((part) => {
      try {
        return decodeURIComponent(part);
      } catch {
        return part;
      }
    });
}

class Route {
  parts = $state.raw<string[]>(parts());

  constructor() {
    addEventListener("hashchange", () => (this.parts = parts()));
  }

  /** The first part: `job`, `new`, `settings`; empty on the shelf. */
  get room(): string {
    return this.parts[0] ?? "";
  }
  /** The open job's id. */
  get jobId(): string | null {
    return this.room === "job" ? (this.parts[1] ?? null) : null;
  }
  /** The place of the job: `shape`, `bench`. */
  get place(): string | null {
    return this.room === "job" ? (this.parts[2] ?? null) : null;
  }
  /** What the place shows: a mark, say. A place sets it with `go`. */
  get detail(): string | null {
    return this.room === "job" ? (this.parts[3] ?? null) : null;
  }
}

export const route = new Route();

/** The address of somewhere in the app: `href("job", id, "bench", "J3")`. */
export function href(...to: string[]): string {
  return `#/${to.map(encodeURIComponent).join("/")}`;
}

/** Goes there; the browser's Back comes back. */
export function go(...to: string[]): void {
  location.hash = href(...to);
}

/** Goes there in place of where we are: Back skips it. */
export function goInstead(...to: string[]): void {
  history.replaceState(null, "", href(...to));
  dispatchEvent(new HashChangeEvent("hashchange"));
}
