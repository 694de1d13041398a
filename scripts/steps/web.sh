# The app: built, its types and layout checked, its own tests run, its first load weighed.
bash scripts/web.sh
cd web
npm run --silent check
npx prettier --check --log-level warn . || fail "run npx prettier --write . in web/"
npm run --silent unit -- --reporter=dot
node ../scripts/first_load.mjs dist
