// What is picked out of the address and of the answers of the core about putting up. Pure.

/** The parts of the place, in their order. */
export const TABS = ["steps", "lifts", "programme", "access", "records"] as const;
export type Tab = (typeof TABS)[number];

/** Which part is shown: that of the address, or the steps. */
export function tabOf(detail: string | null): Tab {
  return TABS.find((tab) => tab === detail) ?? "steps";
}

/** A place in a list that may have become shorter. */
export function within(at: number, length: number): number {
  return Math.max(0, Math.min(at, length - 1));
}
