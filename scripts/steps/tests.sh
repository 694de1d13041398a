# Unit, property and command-line tests.
# In the profile that is shipped: one native build serves tests, binary and app.
cargo test --release --workspace --no-fail-fast --lib --bins --tests --examples
