# What the other steps need, installed when missing.
need cc gcc libc6-dev
have cargo || fail "Rust is missing: install rustup, or Debian's rustc-web, cargo-web, rustfmt-web and rust-web-clippy"
cargo fmt --version >/dev/null 2>&1 || rustup component add rustfmt || apt_install rustfmt-web
cargo clippy --version >/dev/null 2>&1 || rustup component add clippy || apt_install rust-web-clippy
need node nodejs
need pdftotext poppler-utils
cargo_tool cargo-deny 0.20.2
say "$(cargo --version), node $(node --version)"
