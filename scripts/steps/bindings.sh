# The TypeScript bindings of the app are those of the Rust types.
cargo test --quiet -p app --features bindings --test bindings
