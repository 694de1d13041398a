# Unit, property and command-line tests.
cargo test --workspace --no-fail-fast --lib --bins --tests --examples
