//! Builds the binary anew when the app was.

fn main() {
    // The names of its files change with what is in them, so the folder as a whole is watched.
    println!("cargo:rerun-if-changed=../../web/dist");
}
