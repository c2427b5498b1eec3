//! Migrations are compiled in, so a new one must compile the crate anew.

fn main() {
    println!("cargo:rerun-if-changed=migrations");
}
