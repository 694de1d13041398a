//! The command line as a user meets it: every command, and every refusal.

mod bad_arguments;
mod bad_jobs;
mod bench;
mod carrying;
mod commands;
mod faults_of_writing;
mod order;
mod readme;
mod strength;
