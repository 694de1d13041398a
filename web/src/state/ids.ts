// Names for jobs, devices and saves, that no other device makes too.

/** 128 random bits. `crypto.randomUUID` is missing where a page comes over plain HTTP. */
export function newId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
