# Licences, sources and bans of what we depend on (deny.toml).
cargo deny check licenses bans sources
