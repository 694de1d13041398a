// Holds an element at a point of the roof while it is on the page.

import type { Attachment } from "svelte/attachments";
import type { RoofView } from "../view/roof-view";
import type { Point } from "../view/sight";

/** `firm` things stand even where they cover others; `content` is whatever the element's size depends on. */
export function pin(
  view: RoofView | null,
  point: Point,
  firm: boolean,
  content: string,
): Attachment<HTMLElement> {
  return (element) => view?.pins.hold(element, point, firm, content);
}
