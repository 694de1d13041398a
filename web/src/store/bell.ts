// Tells the other tabs of this browser what was kept here.

export interface Rung {
  job: string;
}

export interface Bell {
  ring(rung: Rung): void;
  close(): void;
}

/** `heard` is called for what other tabs kept. Browsers without channels have one tab as far as we can tell. */
export function bell(heard: (rung: Rung) => void): Bell {
  if (typeof BroadcastChannel === "undefined") return { ring: () => undefined, close: () => undefined };
  const channel = new BroadcastChannel("seatcut");
  channel.addEventListener("message", (event: MessageEvent<Rung>) => heard(event.data));
  return { ring: (rung) => channel.postMessage(rung), close: () => channel.close() };
}
