# The examples in the documentation run.
cargo test --workspace --doc
