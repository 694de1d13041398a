//! Any bytes as a plan with pitches: a surface that checks, or an error.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| {
    trials::plan(bytes);
});
