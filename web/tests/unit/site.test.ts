import { expect, test } from "vitest";
import { tabOf, within } from "../../src/places/site/kept";

test("the part that is shown is that of the address, or the steps", () => {
  expect(tabOf("access")).toBe("access");
  for (const other of [null, "", "J3", "Steps"]) expect(tabOf(other)).toBe("steps");
});

test("a step that is gone gives way to the last", () => {
  expect([within(3, 10), within(10, 10), within(5, 0), within(-1, 4)]).toEqual([3, 9, 0, 0]);
});
