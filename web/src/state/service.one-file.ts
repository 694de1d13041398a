// The one-file page needs no service worker: it is on the device as it is.

import { installed } from "./install.svelte";

export async function keepOnDevice(): Promise<void> {
  installed.state = "one-file";
}
