//! The built page, and other builds made from it.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// The release build in `dist`.
pub fn dist() -> PathBuf {
    let dist = Path::new(env!("CARGO_MANIFEST_DIR")).join("dist");
    assert!(dist.join("index.html").is_file(), "build the page first: make build");
    dist
}

/// A copy of `dist` that may be changed. `name` is unique among all journeys.
pub fn copy_of_dist(name: &str) -> PathBuf {
    let copy = scratch(name);
    copy_folder(&dist(), &copy);
    copy
}

/// Another release: `dist` with this in `data-release`, stamped as the build does it.
pub fn release(name: &str) -> PathBuf {
    let copy = copy_of_dist(name);
    change(&copy, "index.html", "<html ", &format!("<html data-release={name} "));
    let worker = env!("CARGO_BIN_EXE_stamp_worker");
    let stamp = Command::new(worker)
        .env("TRUNK_PROFILE", "release")
        .env("TRUNK_STAGING_DIR", &copy)
        .output()
        .expect("stamp_worker runs");
    assert!(stamp.status.success(), "{}", String::from_utf8_lossy(&stamp.stderr));
    copy
}

/// Changes one file of a build and does not stamp it: a broken delivery.
pub fn change(build: &Path, file: &str, from: &str, to: &str) {
    let file = build.join(file);
    let text = fs::read_to_string(&file).expect("the file is text");
    assert!(text.contains(from), "{} has no {from:?}", file.display());
    fs::write(file, text.replace(from, to)).expect("the copy can be changed");
}

/// Puts this in place of every file of a build.
pub fn replace_all(build: &Path, text: &str) {
    for entry in fs::read_dir(build).expect("the build can be listed") {
        let path = entry.expect("the build can be listed").path();
        if path.is_dir() {
            replace_all(&path, text);
        } else {
            fs::write(path, text).expect("the copy can be changed");
        }
    }
}

/// An empty folder for one journey.
pub fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    if folder.exists() {
        fs::remove_dir_all(&folder).expect("an earlier run's folder can go");
    }
    fs::create_dir_all(&folder).expect("there is room for a folder");
    folder
}

fn copy_folder(from: &Path, to: &Path) {
    fs::create_dir_all(to).expect("there is room for a folder");
    for entry in fs::read_dir(from).expect("the build can be listed") {
        let entry = entry.expect("the build can be listed");
        let target = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy_folder(&entry.path(), &target);
        } else {
            fs::copy(entry.path(), target).expect("there is room for a copy");
        }
    }
}
