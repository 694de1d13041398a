// The few things of a browser that the modules under test look for: the tests run without one.
import "fake-indexeddb/auto";

Object.defineProperty(globalThis, "localStorage", {
  value: { getItem: () => null, setItem: () => undefined },
  configurable: true,
});
