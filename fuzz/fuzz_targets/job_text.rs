//! Any bytes as a job file: read or refused, never a fall.
#![no_main]

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| trials::job_text(bytes));
