# Unit, property and command-line tests, and whether the TypeScript bindings of the app are those of the Rust types.
# In the profile that is shipped: one native build serves tests, binary and app.
cargo test $NATIVE --no-fail-fast --lib --bins --tests --examples
