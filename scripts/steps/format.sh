# The code is laid out as `make fmt` does it.
cargo fmt --all --check -- -l || fail "run make fmt"
cargo fmt --manifest-path fuzz/Cargo.toml --check -- -l || fail "run make fmt"
