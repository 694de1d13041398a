# Lints, each a fault.
cargo clippy --release --workspace --features app/bindings --all-targets --quiet -- -D warnings
