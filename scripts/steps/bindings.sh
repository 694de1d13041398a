# The TypeScript bindings of the app are those of the Rust types.
cargo test --release --quiet -p app --features bindings --test bindings
