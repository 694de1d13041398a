# The code is laid out as `make fmt` does it.
cargo fmt --all --check
cargo fmt --manifest-path fuzz/Cargo.toml --check
