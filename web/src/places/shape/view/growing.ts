// Attributes of the graphics card that keep their room from one roof to the next, so that a drag makes no new ones.

import { BufferAttribute, DynamicDrawUsage, InstancedBufferAttribute, type TypedArray } from "three";

/** Room is taken in whole steps of this many items, so that a roof that grows a little need not move. */
const STEP = 4096;

/** Room for so many items: at least what is asked for, and some to spare. */
export function room(items: number): number {
  return Math.max(1, Math.ceil(items / STEP)) * STEP;
}

/** Whether what is there can take so many items. */
export function holds(attribute: BufferAttribute | null, items: number): boolean {
  return attribute !== null && attribute.count >= items;
}

export function points(array: TypedArray, size: number, normalized = false): BufferAttribute {
  return new BufferAttribute(array, size, normalized).setUsage(DynamicDrawUsage);
}

export function instances(array: TypedArray, size: number, normalized = false): InstancedBufferAttribute {
  return new InstancedBufferAttribute(array, size, normalized).setUsage(DynamicDrawUsage);
}

/** Sends the first items of an attribute, and not its spare room. */
export function send(attribute: BufferAttribute, items: number): void {
  attribute.clearUpdateRanges();
  if (items > 0) attribute.addUpdateRange(0, items * attribute.itemSize);
  attribute.needsUpdate = true;
}
