# The pure crates build for the browser, and so do the modules of the app.
wasm_build
