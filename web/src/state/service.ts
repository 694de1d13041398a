// The service worker: keeps the app on the device, and says when a newer one waits.

import { laterParts } from "../core/sources";
import { app } from "./app.svelte";
import { installed } from "./install.svelte";

/** How often the page looks whether an edit is still being kept, ms. */
const LOOK_MS = 100;
/** How long after the app stands its larger parts are fetched, ms: first things first. */
const LATER_MS = 4_000;

export async function keepOnDevice(): Promise<void> {
  if (!("serviceWorker" in navigator) || !window.isSecureContext) return;
  const { serviceWorker } = navigator;
  // The first worker of a page takes it over without a reload: nothing is newer than what it runs.
  const wasKept = serviceWorker.controller !== null;
  installed.state = wasKept ? "ready" : "fetching";
  try {
    const registration = await serviceWorker.register("./sw.js");
    watch(registration, wasKept);
  } catch {
    installed.state = "not";
    return;
  }
  if (wasKept)
    serviceWorker.addEventListener("controllerchange", () => void whenKept().then(() => location.reload()));
  await serviceWorker.ready;
  installed.state = "ready";
  setTimeout(() => void fetchLater(), LATER_MS);
}

function watch(registration: ServiceWorkerRegistration, wasKept: boolean): void {
  const offer = () => {
    const { waiting } = registration;
    if (waiting && wasKept)
      installed.useNewer = async () => {
        await whenKept();
        waiting.postMessage({ type: "SKIP_WAITING" });
      };
  };
  offer();
  registration.addEventListener("updatefound", () => {
    registration.installing?.addEventListener("statechange", offer);
  });
}

/** Resolves when no edit is being made or kept. */
async function whenKept(): Promise<void> {
  while (app.session.busy) await new Promise((resolve) => setTimeout(resolve, LOOK_MS));
}

/** Fetches through the service worker what is to be there with no network; it keeps what passes. */
async function fetchLater(): Promise<void> {
  for (const part of laterParts()) {
    // Out of reach now: fetched when it is wanted, or the next time.
    await fetch(part).catch(() => undefined);
  }
}
