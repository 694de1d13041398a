# The app as people use it: the shipped binary serves it, a real browser opens it, on a phone's and a desk's screen.
have chromium || [ -n "${CHROMIUM:-}" ] || apt_install chromium
cd web
npx vitest run --config e2e/vitest.config.ts
