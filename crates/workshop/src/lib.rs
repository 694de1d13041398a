//! The workshop server.
