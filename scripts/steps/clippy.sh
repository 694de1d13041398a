# Lints, each a fault.
cargo clippy --workspace --features app/bindings --all-targets --quiet -- -D warnings
