# Lints, each a fault.
cargo clippy --workspace --all-targets --quiet -- -D warnings
