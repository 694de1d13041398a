# The documentation builds with no broken link and nothing left undocumented.
RUSTDOCFLAGS="-D warnings" cargo doc --release --workspace --features app/bindings --no-deps --quiet
