# The pure crates build for the browser, and so does the crate that runs them there.
wasm_build
