# Unit, property and command-line tests.
cargo test --workspace --lib --bins --tests --examples
