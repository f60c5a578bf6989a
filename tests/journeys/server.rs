//! The host the page comes from; a real process, so that it can really be gone.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use crate::build;

/// Serves one build. It keeps its address when stopped and started again.
pub struct Server {
    folder: PathBuf,
    under: String,
    port: u16,
    process: Option<Child>,
}

impl Server {
    /// The release build at the root of a host.
    pub fn new() -> Self {
        Self::serving(&build::dist(), "/")
    }

    /// Any build, below any path, such as "/some/sub/".
    pub fn serving(folder: &Path, under: &str) -> Self {
        let mut server =
            Self { folder: folder.to_owned(), under: under.to_owned(), port: 0, process: None };
        server.start();
        server
    }

    /// Where the page is.
    pub fn address(&self) -> String {
        format!("http://127.0.0.1:{}{}", self.port, self.under)
    }

    /// No network from here on.
    pub fn stop(&mut self) {
        if let Some(mut process) = self.process.take() {
            process.kill().expect("the server can be stopped");
            process.wait().expect("the server can be stopped");
        }
    }

    /// The network is back, at the same address.
    pub fn start(&mut self) {
        self.stop();
        let mut process = Command::new(env!("CARGO_BIN_EXE_serve"))
            .arg(&self.folder)
            .args([&self.port.to_string(), &self.under])
            .stdout(Stdio::piped())
            .spawn()
            .expect("the server runs");
        let mut line = String::new();
        let said = process.stdout.take().expect("the server speaks");
        BufReader::new(said).read_line(&mut line).expect("the server speaks");
        self.process = Some(process);
        // "Serving dist on http://localhost:8080/ (stop with Ctrl-C)"
        let port = line.split("localhost:").nth(1).and_then(|rest| rest.split('/').next());
        self.port = port.and_then(|port| port.parse().ok()).expect("the server names its port");
    }

    /// The host has got another build.
    pub fn deploy(&mut self, folder: &Path) {
        self.folder = folder.to_owned();
        self.start();
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop();
    }
}
