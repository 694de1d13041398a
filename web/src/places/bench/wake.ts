// Keeps the screen on while a card lies open: hands in gloves don't wake a phone.

/** Asks for it, and gives what lets go again. A browser that refuses is left alone. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | null = null;
  let gone = false;
  const ask = () => {
    if (gone || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    navigator.wakeLock.request("screen").then(
      (given) => {
        if (gone) void given.release();
        else lock = given;
      },
      () => undefined,
    );
  };
  ask();
  // The lock is lost with the page out of sight.
  document.addEventListener("visibilitychange", ask);
  return () => {
    gone = true;
    document.removeEventListener("visibilitychange", ask);
    void lock?.release();
  };
}
