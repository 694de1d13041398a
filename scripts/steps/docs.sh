# The documentation builds with no broken link and nothing left undocumented.
RUSTDOCFLAGS="-D warnings" cargo doc --workspace --no-deps --quiet
