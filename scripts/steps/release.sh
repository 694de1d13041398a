# The shipped binary.
cargo build --release -p seatcut
