//! Running the binary in a folder of its own.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Output;

use assert_cmd::Command;

/// A small job that is good.
pub const GOOD_JOB: &str = "\
# Measured on a dry day.
format = 1
title = \"Boathouse workshop\"

[plan]
corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]

[roof]
pitch = 40  # as the house
eaves = { overhang = 300 }

[roof.walls]
B = { gable = true }

[timber]
rafter = { size = [47, 150], centres = 400 }
hip = { size = [47, 200], edge = \"backed\" }
ridge = { size = [32, 225] }
";

/// A folder that is removed at the end of the test.
pub struct Bench {
    folder: PathBuf,
}

impl Bench {
    /// A folder with this name, which no other test uses.
    pub fn new(name: &str) -> Self {
        let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
        if folder.exists() {
            fs::remove_dir_all(&folder).unwrap();
        }
        fs::create_dir_all(&folder).unwrap();
        Self { folder }
    }

    /// The same with [`GOOD_JOB`] in it as `good.toml`.
    pub fn with_job(name: &str) -> Self {
        let bench = Self::new(name);
        bench.put("good.toml", GOOD_JOB.as_bytes());
        bench
    }

    pub fn put(&self, name: &str, bytes: &[u8]) {
        fs::write(self.folder.join(name), bytes).unwrap();
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }

    pub fn bytes(&self, name: &str) -> Vec<u8> {
        fs::read(self.folder.join(name)).unwrap()
    }

    pub fn text(&self, name: &str) -> String {
        String::from_utf8(self.bytes(name)).unwrap()
    }

    /// Names of the files in the folder, sorted.
    pub fn files(&self) -> Vec<String> {
        let names = fs::read_dir(&self.folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap());
        let mut names: Vec<String> = names.collect();
        names.sort();
        names
    }

    /// Runs the binary in the folder.
    pub fn run(&self, args: &[&str]) -> Ran {
        self.run_with(args, b"")
    }

    /// The same with something on standard input.
    pub fn run_with(&self, args: &[&str], input: &[u8]) -> Ran {
        let mut command = Command::cargo_bin("seatcut").unwrap();
        let output = command.current_dir(&self.folder).args(args).write_stdin(input).output().unwrap();
        Ran::new(output)
    }
}

impl Drop for Bench {
    fn drop(&mut self) {
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// What a run gave.
#[derive(Debug)]
pub struct Ran {
    pub code: Option<i32>,
    pub out: String,
    pub err: String,
}

impl Ran {
    fn new(output: Output) -> Self {
        Self {
            code: output.status.code(),
            out: String::from_utf8(output.stdout).unwrap(),
            err: String::from_utf8(output.stderr).unwrap(),
        }
    }

    /// Ended well, and gives what it printed.
    #[track_caller]
    pub fn good(self) -> String {
        assert_eq!(self.code, Some(0), "{self:?}");
        self.out
    }

    /// Was refused with this code, printed no result, and gives the message.
    #[track_caller]
    pub fn refused(self, code: i32) -> String {
        assert_eq!(self.code, Some(code), "{self:?}");
        assert_eq!(self.out, "", "no result where there is a fault");
        assert!(!self.err.is_empty(), "a refusal says why");
        assert!(!self.err.contains("panicked"), "{}", self.err);
        self.err
    }
}
