# The examples in the documentation run.
cargo test --release --workspace --no-fail-fast --doc
