//! After a release build: lists and hashes what was built, and fills the offline worker with it.
//!
//! Trunk runs it as a hook (Trunk.toml). A debug build's worker stays unfilled, and so keeps nothing.

use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::{env, fmt, fs, io};

/// Hex SHA-256 of each built file's bytes, by its path relative to the worker.
type Hashes = BTreeMap<String, String>;

const WORKER: &str = "sw.js";
const VERSION_LINE: &str = "const VERSION = ";
const ASSETS_LINE: &str = "const ASSETS = ";

fn main() -> ExitCode {
    if env::var("TRUNK_PROFILE").as_deref() != Ok("release") {
        return ExitCode::SUCCESS;
    }
    let Some(folder) = env::var_os("TRUNK_STAGING_DIR").map(PathBuf::from) else {
        eprintln!("stamp_worker: TRUNK_STAGING_DIR names no folder");
        return ExitCode::FAILURE;
    };
    match stamp_folder(&folder) {
        Ok((version, count)) => {
            println!("stamp_worker: version {version}, {count} files");
            ExitCode::SUCCESS
        }
        Err(error) => {
            eprintln!("stamp_worker: {}: {error}", folder.display());
            ExitCode::FAILURE
        }
    }
}

/// Fills the worker in `folder`; says which version it is and how many files it keeps.
fn stamp_folder(folder: &Path) -> Result<(String, usize), Refused> {
    let mut hashes = Hashes::new();
    collect(folder, "", &mut hashes)?;
    hashes.remove(WORKER);
    let worker = folder.join(WORKER);
    let (version, text) = stamp(&fs::read_to_string(&worker)?, &hashes)?;
    fs::write(worker, text)?;
    Ok((version, hashes.len()))
}

fn collect(folder: &Path, prefix: &str, hashes: &mut Hashes) -> Result<(), Refused> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if !is_plain(&name) {
            return Err(Refused::Name(format!("{prefix}{name}")));
        }
        let path = format!("{prefix}{name}");
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), &format!("{path}/"), hashes)?;
        } else {
            hashes.insert(path, hex(&fs::read(entry.path())?));
        }
    }
    Ok(())
}

/// Names that mean the same as an address and as text in the worker. Many hosts hide dotted files.
fn is_plain(name: &str) -> bool {
    !name.starts_with('.') && name.bytes().all(|b| b.is_ascii_alphanumeric() || b"-_.".contains(&b))
}

/// The worker's text with its version and its list in place, whether it was filled before or not.
///
/// The version follows from the list and from the worker's own text, so that a change of either is
/// a new version with its own cache.
fn stamp(worker: &str, hashes: &Hashes) -> Result<(String, String), Refused> {
    let list: Vec<String> = hashes.iter().map(|(p, h)| format!("\"{p}\":\"{h}\"")).collect();
    let assets = format!("{ASSETS_LINE}{{{}}};", list.join(","));
    let blank = set_line(worker, VERSION_LINE, &format!("{VERSION_LINE}\"\";"))?;
    let filled = set_line(&blank, ASSETS_LINE, &assets)?;
    let version: String = hex(filled.as_bytes()).chars().take(16).collect();
    let text = set_line(&filled, VERSION_LINE, &format!("{VERSION_LINE}\"{version}\";"))?;
    Ok((version, text))
}

/// Puts `new` in place of the one line that begins with `start`.
fn set_line(text: &str, start: &'static str, new: &str) -> Result<String, Refused> {
    if text.lines().filter(|line| line.starts_with(start)).count() != 1 {
        return Err(Refused::Worker(start));
    }
    let lines = text.lines().map(|line| if line.starts_with(start) { new } else { line });
    Ok(lines.map(|line| format!("{line}\n")).collect())
}

fn hex(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

#[derive(Debug)]
enum Refused {
    /// A file's name would need escaping in an address.
    Name(String),
    /// The worker has not exactly one line to fill.
    Worker(&'static str),
    Io(io::Error),
}

impl From<io::Error> for Refused {
    fn from(error: io::Error) -> Self {
        Self::Io(error)
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Name(name) => write!(f, "the name {name:?} is not plain enough for an address"),
            Self::Worker(start) => write!(f, "{WORKER} must have one line {start:?}"),
            Self::Io(error) => error.fmt(f),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const BLANK: &str = "// top\nconst VERSION = \"\";\nconst ASSETS = {}; // list\nrest();\n";

    fn one(path: &str, content: &str) -> Hashes {
        Hashes::from([(path.to_owned(), hex(content.as_bytes()))])
    }

    #[test]
    fn fills_both_lines_and_leaves_the_rest() {
        let (version, text) = stamp(BLANK, &one("a.css", "abc")).unwrap();
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(version.len(), 16);
        assert_eq!(
            text,
            format!(
                "// top\nconst VERSION = \"{version}\";\nconst ASSETS = {{\"a.css\":\"{abc}\"}};\nrest();\n"
            )
        );
    }

    #[test]
    fn the_same_build_is_the_same_version_however_often_it_is_stamped() {
        let (first, text) = stamp(BLANK, &one("a.css", "abc")).unwrap();
        let (second, again) = stamp(&text, &one("a.css", "abc")).unwrap();
        assert_eq!((first, text), (second, again));
    }

    #[test]
    fn a_change_of_content_name_or_worker_is_another_version() {
        let version = |worker: &str, hashes| stamp(worker, &hashes).unwrap().0;
        let base = version(BLANK, one("a.css", "abc"));
        assert_ne!(base, version(BLANK, one("a.css", "abd")));
        assert_ne!(base, version(BLANK, one("b.css", "abc")));
        assert_ne!(base, version(&BLANK.replace("rest", "other"), one("a.css", "abc")));
    }

    #[test]
    fn a_worker_without_its_lines_is_refused() {
        assert!(matches!(stamp("rest();\n", &one("a", "")), Err(Refused::Worker(_))));
        let twice = format!("{BLANK}{BLANK}");
        assert!(matches!(stamp(&twice, &one("a", "")), Err(Refused::Worker(_))));
    }

    #[test]
    fn the_worker_as_shipped_can_be_filled() {
        let shipped = include_str!("../../public/sw.js");
        assert!(stamp(shipped, &one("index.html", "page")).is_ok());
    }

    #[test]
    fn only_plain_names_are_kept() {
        for name in ["index.html", "page-0a1b_bg.wasm"] {
            assert!(is_plain(name), "{name}");
        }
        for name in [".hidden", "two words", "a\"b", "ümlaut", "a#b"] {
            assert!(!is_plain(name), "{name}");
        }
    }
}
