# The examples in the documentation run.
cargo test --workspace --no-fail-fast --doc
