import { expect, it } from "vitest";
import { escaped, unescaped } from "../../src/state/escaping";

it.each(["</script><script>", "a & b &lt; &amp;lt;", "<!-- <script>", ""])(
  "brings %j through a page",
  (text) => {
    expect(escaped(text)).not.toContain("<");
    expect(unescaped(escaped(text))).toBe(text);
  },
);
