# The examples in the documentation run.
cargo test $NATIVE --no-fail-fast --doc
