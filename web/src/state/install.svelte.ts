// Whether the app works with no network, and whether a newer one waits.

class Installed {
  /** `ready`: everything is kept on the device. `not`: this browser or address can't. `one-file`: nothing is needed. */
  state = $state<"ready" | "fetching" | "not" | "one-file">("not");
  /** Puts the newer app to use; null while none waits. */
  useNewer = $state.raw<(() => Promise<void>) | null>(null);
}

export const installed = new Installed();
