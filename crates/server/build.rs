//! The web app is compiled in: build again when it was built again.

fn main() {
    println!("cargo:rerun-if-changed=../../web/dist");
}
