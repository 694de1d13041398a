// A job's text inside a page, in `<script type="application/toml" id="job">`: nothing in it may end the element.

export function escaped(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;");
}

export function unescaped(text: string): string {
  return text.replace(/&lt;/g, "<").replace(/&amp;/g, "&");
}
