//! A phone in a brewer's hand: Chromium, 360 x 640, driven as a person would.
//!
//! Every step waits until the page lets it happen, at most [`PATIENCE`], and then stops the journey with
//! what was on the screen. Finding and touching things is in `finding.rs`, what it notices in `noticing.rs`.

use std::io::{BufRead, BufReader};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::sync::atomic::{AtomicU32, Ordering};
use std::time::{Duration, Instant};
use std::{env, fs};

use serde_json::{Value, json};
use thirtyfour::{ChromiumLikeCapabilities, DesiredCapabilities, LoggingPrefsLogLevel, WebDriver};

use crate::build;
use crate::start_up::say;

/// The longest wait for anything.
pub const PATIENCE: Duration = Duration::from_secs(15);

const FLAGS: [&str; 10] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--disable-dev-shm-usage",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--lang=en-GB",
];

/// One phone with its own, at first empty, memory. It is put away when dropped.
pub struct Phone {
    driver: Option<WebDriver>,
    /// The browser's own process, which outlives a driver that is killed.
    browser: Option<u64>,
    chromedriver: Child,
    /// Held open: the driver would stop when it can no longer speak.
    _said: BufReader<ChildStdout>,
    port: u16,
    memory: PathBuf,
    since: Instant,
}

impl Phone {
    /// A new phone.
    pub async fn new() -> Self {
        static COUNT: AtomicU32 = AtomicU32::new(0);
        let since = Instant::now();
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        // It takes a free port of one kind of address and gives up where another program has the same
        // port of the other kind, so it may be tried again.
        let (chromedriver, said, port) =
            (0..3).find_map(|_| start_driver()).expect("chromedriver starts");
        let memory = build::scratch(&format!("phone-{number}"));
        let mut phone =
            Self { driver: None, browser: None, chromedriver, _said: said, port, memory, since };
        phone.switch_on().await;
        phone
    }

    async fn switch_on(&mut self) {
        let mut wants = DesiredCapabilities::chrome();
        for flag in FLAGS {
            wants.add_arg(flag).unwrap();
        }
        wants.add_arg(&format!("--user-data-dir={}", self.memory.display())).unwrap();
        if let Some(browser) =
            ["chromium", "chromium-browser", "google-chrome"].into_iter().find_map(on_path)
        {
            wants.set_binary(&browser.display().to_string()).unwrap();
        }
        let screen =
            json!({ "width": 360, "height": 640, "pixelRatio": 2, "touch": true, "mobile": true });
        wants
            .add_experimental_option("mobileEmulation", json!({ "deviceMetrics": screen }))
            .unwrap();
        wants.set_logging_prefs("browser", LoggingPrefsLogLevel::All).unwrap();
        wants.set_logging_prefs("performance", LoggingPrefsLogLevel::All).unwrap();
        let address = format!("http://127.0.0.1:{}", self.port);
        // The one thing that may be tried twice: a busy machine can be too slow to start a browser.
        let driver = match WebDriver::new(&address, wants.clone()).await {
            Ok(driver) => driver,
            Err(_) => WebDriver::new(&address, wants).await.expect("the browser starts"),
        };
        self.browser = driver.capabilities().get("goog:processID").and_then(Value::as_u64);
        driver.set_script_timeout(4 * PATIENCE).await.unwrap();
        self.driver = Some(driver);
    }

    /// Closes the browser altogether and starts it anew. What it had stored stays.
    pub async fn restart(&mut self) {
        if let Some(driver) = self.driver.take() {
            driver.quit().await.expect("the browser closes");
        }
        self.switch_on().await;
    }

    /// The browser dies at once, as when the phone's power goes, and is started anew. What was on the disk
    /// stays.
    pub async fn dies(&mut self) {
        if let Some(browser) = self.browser.take() {
            let killed = Command::new("kill").args(["-9", &browser.to_string()]).status();
            assert!(killed.expect("it can be killed").success());
        }
        if let Some(driver) = self.driver.take() {
            let _ = driver.leak();
        }
        self.switch_on().await;
    }

    /// The driver itself, for what has no method here.
    pub fn driver(&self) -> &WebDriver {
        self.driver.as_ref().expect("the phone is on")
    }

    /// Opens an address and waits for the page proper.
    pub async fn open(&self, address: &str) {
        self.driver().goto(address).await.unwrap_or_else(|error| panic!("{address}: {error}"));
        self.is_ready().await;
    }

    /// Loads the page once more and waits for it.
    pub async fn reload(&self) {
        self.driver().refresh().await.expect("the page reloads");
        self.is_ready().await;
    }

    /// Waits until the page has been mounted.
    pub async fn is_ready(&self) {
        self.wait_until("the page is ready", "return 'ready' in document.documentElement.dataset")
            .await;
    }

    /// Waits until everything the page needs is kept for use without a network.
    pub async fn is_kept_for_offline(&self) {
        let kept = "return document.documentElement.dataset.offline === 'ready'";
        self.wait_until("the page is kept for offline use", kept).await;
    }

    /// Runs JavaScript in the page: `run("return document.title")`.
    pub async fn run(&self, script: &str) -> Value {
        self.try_run(script, vec![]).await.unwrap_or_else(|error| panic!("{script}: {error}"))
    }

    /// Runs JavaScript that ends in a promise, and waits for it: `settle("registration.update()")`.
    pub async fn settle(&self, promise: &str) -> Value {
        let script = format!(
            "const done = arguments[arguments.length - 1];
             (async () => {promise})().then(done, (error) => done('failed: ' + error));"
        );
        let answer = self.driver().execute_async(script, vec![]).await;
        answer.unwrap_or_else(|error| panic!("{promise}: {error}")).json().clone()
    }

    pub(crate) async fn try_run(&self, script: &str, args: Vec<Value>) -> Result<Value, String> {
        match self.driver().execute(script, args).await {
            Ok(answer) => Ok(answer.json().clone()),
            Err(error) => Err(error.to_string()),
        }
    }

    /// Waits until the script returns something true; `what` is said when it never does.
    pub async fn wait_until(&self, what: &str, script: &str) {
        let begun = Instant::now();
        loop {
            // An error is a page in the midst of loading; it may yet come true.
            let last = self.try_run(script, vec![]).await;
            if matches!(last, Ok(Value::Bool(true))) {
                return;
            }
            if begun.elapsed() > PATIENCE {
                panic!(
                    "waited in vain until {what} ({last:?}); on the screen:\n{}\nthe browser complained: {:#?}",
                    self.screen_text().await,
                    self.complaints().await
                );
            }
            tokio::time::sleep(Duration::from_millis(30)).await;
        }
    }

    /// All text now on the screen.
    pub async fn screen_text(&self) -> String {
        let text = self.try_run("return document.body.innerText", vec![]).await;
        text.map_or_else(|error| error, |text| text.as_str().unwrap_or_default().to_owned())
    }

    /// The theme for the dark, as the phone's own setting.
    pub async fn by_night(&self) {
        self.prefer("dark").await;
    }

    /// The theme for the day, as the phone's own setting.
    pub async fn by_day(&self) {
        self.prefer("light").await;
    }

    async fn prefer(&self, scheme: &str) {
        let features = json!([{ "name": "prefers-color-scheme", "value": scheme }]);
        self.devtools("Emulation.setEmulatedMedia", json!({ "features": features })).await;
    }

    /// Another screen, in CSS pixels.
    pub async fn screen(&self, width: u32, height: u32) {
        let metrics = json!({ "width": width, "height": height, "deviceScaleFactor": 2, "mobile": width < 700 });
        self.devtools("Emulation.setDeviceMetricsOverride", metrics).await;
    }

    /// A screen so high that nothing lies below the bars at its edges.
    pub async fn all_in_sight(&self) {
        self.screen(360, 9000).await;
    }

    /// A picture of the screen: `target/shots/<name>.png`.
    pub async fn screenshot(&self, name: &str) {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("target/shots");
        let file = folder.join(format!("{name}.png"));
        fs::create_dir_all(file.parent().unwrap_or(&folder)).expect("there is room for pictures");
        self.driver().screenshot(&file).await.expect("the screen can be pictured");
    }

    /// Gives a DevTools command, for what has no method here.
    pub async fn devtools(&self, method: &str, params: Value) {
        let answer = self.driver().cdp().send_raw(method, params).await;
        answer.unwrap_or_else(|error| panic!("{method}: {error}"));
    }
}

impl Drop for Phone {
    fn drop(&mut self) {
        // Not asked to close: a journey that stopped half-way must not wait for an answer.
        if let Some(driver) = self.driver.take() {
            let _ = driver.leak();
        }
        if let Some(browser) = self.browser {
            // At once: what it would still write is thrown away with its memory.
            let kill = ["-9", &browser.to_string()];
            let _ = Command::new("kill").args(kill).stderr(Stdio::null()).status();
        }
        let _ = self.chromedriver.kill();
        let _ = self.chromedriver.wait();
        // The browser's many processes end one by one and write to the last.
        for _ in 0..50 {
            if fs::remove_dir_all(&self.memory).is_ok() {
                break;
            }
            std::thread::sleep(Duration::from_millis(40));
        }
        // A test has its thread to itself, and its name.
        let took = self.since.elapsed().as_secs_f64();
        say(&format!("{}: {took:.1} s", std::thread::current().name().unwrap_or_default()));
    }
}

/// The driver, its voice and its port; `None` when it gave up.
fn start_driver() -> Option<(Child, BufReader<ChildStdout>, u16)> {
    let mut chromedriver = Command::new("chromedriver")
        .arg("--port=0")
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("chromedriver is on PATH: make setup-browser");
    let mut said = BufReader::new(chromedriver.stdout.take().expect("chromedriver speaks"));
    match port_said(&mut said) {
        Some(port) => Some((chromedriver, said, port)),
        None => {
            let _ = chromedriver.kill();
            let _ = chromedriver.wait();
            None
        }
    }
}

/// "ChromeDriver was started successfully on port 12345."
fn port_said(said: &mut impl BufRead) -> Option<u16> {
    for line in said.lines() {
        let line = line.expect("chromedriver speaks");
        if let Some(port) = line.split("successfully on port ").nth(1) {
            return Some(port.trim_end_matches('.').parse().expect("a port"));
        }
    }
    None
}

fn on_path(name: &str) -> Option<PathBuf> {
    let path = env::var_os("PATH")?;
    env::split_paths(&path).map(|folder| folder.join(name)).find(|file| file.is_file())
}
