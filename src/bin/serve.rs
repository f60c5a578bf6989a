//! Serves a built page from this machine as any plain static host would: `serve [FOLDER] [PORT] [PATH]`.
//!
//! For trying the page and for the journeys; it adds no header that the page would come to lean on. That it
//! needs none of a phone's senses is said by one that a document cannot say itself.

use std::fs;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::net::{TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::sync::Arc;
use std::time::Duration;
use std::{env, thread};

/// What is served, and below which path ("/" or "/some/sub/").
struct Site {
    folder: PathBuf,
    under: String,
}

/// What a request is answered with.
#[derive(Debug, PartialEq)]
enum Answer {
    File(PathBuf),
    Moved(String),
    NotFound,
    NotAllowed,
}

fn main() -> ExitCode {
    let mut args = env::args().skip(1);
    let folder = args.next().unwrap_or_else(|| "dist".to_owned());
    let port = args.next().unwrap_or_else(|| "8080".to_owned());
    let under = args.next().unwrap_or_else(|| "/".to_owned());
    // Only this machine, unless told otherwise: HOST=0.0.0.0 shows the page to the whole network.
    let host = env::var("HOST").unwrap_or_else(|_| "127.0.0.1".to_owned());
    match serve(&folder, &host, &port, &under) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("serve: {folder} on {host}:{port}: {error}");
            ExitCode::FAILURE
        }
    }
}

fn serve(folder: &str, host: &str, port: &str, under: &str) -> io::Result<()> {
    let under = format!("/{}/", under.trim_matches('/')).replace("//", "/");
    // Resolved once, so that no link inside can lead out of it unnoticed.
    let site = Arc::new(Site { folder: fs::canonicalize(folder)?, under });
    let listener = TcpListener::bind(format!("{host}:{port}"))?;
    let port = listener.local_addr()?.port();
    println!("Serving {folder} on http://localhost:{port}{} (stop with Ctrl-C)", site.under);
    for stream in listener.incoming() {
        let site = Arc::clone(&site);
        // A browser that goes away in mid-answer is no fault of the server.
        thread::spawn(move || stream.and_then(|stream| respond(&stream, &site)));
    }
    Ok(())
}

fn respond(mut stream: &TcpStream, site: &Site) -> io::Result<()> {
    stream.set_read_timeout(Some(Duration::from_secs(10)))?;
    // A request longer than this is not a browser's.
    let mut lines = BufReader::new(stream.take(64 * 1024)).lines();
    let request = lines.next().transpose()?.unwrap_or_default();
    for line in lines {
        if line?.is_empty() {
            break;
        }
    }
    let (method, target) = request.split_once(' ').unwrap_or_default();
    let target = target.split(' ').next().unwrap_or_default();
    let (head, body) = match site.answer(method, target) {
        Answer::File(path) => (headers("200 OK", media_type(&path), ""), fs::read(&path)?),
        Answer::Moved(to) => (headers("301 Moved Permanently", TEXT, &to), vec![]),
        Answer::NotFound => (headers("404 Not Found", TEXT, ""), b"Not found\n".to_vec()),
        Answer::NotAllowed => (headers("405 Method Not Allowed", TEXT, ""), vec![]),
    };
    write!(stream, "{head}Content-Length: {}\r\n\r\n", body.len())?;
    if method != "HEAD" {
        stream.write_all(&body)?;
    }
    stream.flush()
}

/// Of what a phone has, the page asks for one thing: to keep its screen on. README names it for hosts.
const PERMISSIONS: &str = "camera=(), geolocation=(), microphone=(), payment=(), usb=(), serial=(), \
     midi=(), accelerometer=(), gyroscope=(), magnetometer=(), screen-wake-lock=(self)";

const TEXT: &str = "text/plain; charset=utf-8";

fn headers(status: &str, media_type: &str, location: &str) -> String {
    let location =
        if location.is_empty() { String::new() } else { format!("Location: {location}\r\n") };
    format!(
        "HTTP/1.1 {status}\r\nContent-Type: {media_type}\r\n{location}\
         Cache-Control: no-cache\r\nX-Content-Type-Options: nosniff\r\n\
         Permissions-Policy: {PERMISSIONS}\r\nConnection: close\r\n"
    )
}

impl Site {
    fn answer(&self, method: &str, target: &str) -> Answer {
        if method != "GET" && method != "HEAD" {
            return Answer::NotAllowed;
        }
        let path = target.split(['?', '#']).next().unwrap_or_default();
        if !path.is_empty() && format!("{path}/") == self.under {
            return Answer::Moved(self.under.clone());
        }
        let Some(inside) = path.strip_prefix(&self.under) else {
            return Answer::NotFound;
        };
        // Built names are plain (stamp_worker sees to it): whatever needs decoding is not one of them.
        let plain = |part: &str| {
            !part.starts_with('.')
                && part.bytes().all(|b| b.is_ascii_alphanumeric() || b"-_.".contains(&b))
        };
        if !inside.split('/').all(plain) {
            return Answer::NotFound;
        }
        let mut file = self.folder.join(inside);
        if inside.is_empty() || inside.ends_with('/') {
            file.push("index.html");
        }
        match fs::canonicalize(file) {
            Ok(file) if file.is_file() && file.starts_with(&self.folder) => Answer::File(file),
            _ => Answer::NotFound,
        }
    }
}

fn media_type(path: &Path) -> &'static str {
    match path.extension().and_then(|ending| ending.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// This package's own `public` folder, served below `under`.
    fn public(under: &str) -> Site {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("public");
        Site { folder: fs::canonicalize(folder).unwrap(), under: under.to_owned() }
    }

    #[test]
    fn a_file_is_found_at_the_root_and_below_a_path() {
        let icon = public("/").folder.join("icon.svg");
        assert_eq!(public("/").answer("GET", "/icon.svg?x=1"), Answer::File(icon.clone()));
        assert_eq!(public("/some/sub/").answer("HEAD", "/some/sub/icon.svg"), Answer::File(icon));
        assert_eq!(public("/some/sub/").answer("GET", "/icon.svg"), Answer::NotFound);
    }

    #[test]
    fn the_folder_without_its_slash_is_sent_on() {
        let sub = public("/some/sub/");
        assert_eq!(sub.answer("GET", "/some/sub"), Answer::Moved("/some/sub/".to_owned()));
    }

    #[test]
    fn nothing_outside_the_folder_is_served() {
        for target in ["/../Cargo.toml", "/%2e%2e/Cargo.toml", "//etc/passwd", "/.", "/a\\b", ""] {
            assert_eq!(public("/").answer("GET", target), Answer::NotFound, "{target}");
        }
    }

    #[test]
    fn only_reading_is_allowed() {
        assert_eq!(public("/").answer("POST", "/icon.svg"), Answer::NotAllowed);
    }
}
