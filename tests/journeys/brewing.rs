//! What a brewer does again and again: going about, noting a batch, dating things in the past.

use serde_json::{Value, json};
use std::sync::Mutex;

use crate::phone::Phone;
use crate::server::Server;

/// Every place that needs no batch.
pub const PLACES: [&str; 10] = [
    "#/now",
    "#/batches",
    "#/batches/new",
    "#/bench",
    "#/bench/gravity",
    "#/bench/sugar",
    "#/bench/strength",
    "#/bench/cooling",
    "#/bench/yeast",
    "#/bench/scales",
];

/// The four stages in an address.
pub const STAGES: [&str; 4] = ["pitch", "watch", "bottle", "open"];

/// A page just opened on a phone that has nothing stored.
pub async fn opened() -> (Server, Phone) {
    let server = Server::new();
    let phone = Phone::new().await;
    phone.open(&server.address()).await;
    (server, phone)
}

/// Every place, those of a batch with readings among them.
pub async fn everywhere(phone: &Phone) -> Vec<String> {
    let batch = phone.brew("Cellar bitter", &[("1.010", 30.0), ("1.010", 26.0)]).await;
    let mut places: Vec<String> = PLACES.map(str::to_owned).to_vec();
    places.push("#/gear".to_owned());
    places.extend(STAGES.map(|stage| format!("{batch}{stage}")));
    places.push(format!("{batch}edit"));
    places.push("#/nowhere".to_owned());
    places
}

impl Phone {
    /// Goes to a place by its address, and waits until it is drawn and has the attention.
    pub async fn go(&self, hash: &str) {
        let script = format!(
            "{{ if (location.hash !== {0}) {{
                 const gone = new Promise((go) => addEventListener('hashchange', go, {{ once: true }}));
                 location.hash = {0};
                 await gone;
               }}
               for (let n = 0; n < 3; n += 1) await new Promise(requestAnimationFrame);
               return location.hash; }}",
            json!(hash)
        );
        assert_eq!(self.settle(&script).await, json!(hash), "on the way to {hash}");
    }

    /// Where the page is now: `#/bench`.
    pub async fn place(&self) -> String {
        self.run("return location.hash").await.as_str().unwrap_or_default().to_owned()
    }

    /// Waits until the page is at a place whose address ends so.
    pub async fn is_at(&self, end: &str) {
        let script = format!("return location.hash.endsWith({})", json!(end));
        self.wait_until(&format!("the page is at {end}"), &script).await;
    }

    /// Lets the page draw what it has just been told.
    pub async fn draws(&self) {
        self.settle("{ for (let n = 0; n < 2; n += 1) await new Promise(requestAnimationFrame); }")
            .await;
    }

    /// The date and time so many days ago, as the phone's own field writes it.
    pub async fn days_ago(&self, days: f64) -> String {
        let script = format!(
            "const then = new Date(Date.now() - {days} * 864e5);
             return new Date(then - then.getTimezoneOffset() * 6e4).toISOString().slice(0, 16)"
        );
        self.run(&script).await.as_str().unwrap_or_default().to_owned()
    }

    /// Dates what is being noted: so many days ago.
    pub async fn dated(&self, label: &str, days: f64) {
        let then = self.days_ago(days).await;
        self.tap("Another time").await;
        self.set(label, &then).await;
    }

    /// Opens everything that is folded away.
    pub async fn unfold(&self) {
        self.run("document.querySelectorAll('details').forEach((d) => { d.open = true; })").await;
        self.draws().await;
    }

    /// Opens the rows of the log.
    pub async fn open_rows(&self) {
        self.wait_until("a row is there", "return document.querySelector('.log-line') !== null")
            .await;
        let open = "document.querySelectorAll('.log-row').forEach((d) => { d.open = true; })";
        self.run(open).await;
        self.draws().await;
    }

    /// Starts a batch of 20 litres with a clean ale yeast, so many days ago, and gives its address
    /// without the stage: `#/batch/7f/`.
    pub async fn start_batch(&self, name: &str, days: f64) -> String {
        self.go("#/batches/new").await;
        self.type_into("Name", name).await;
        self.type_into("Volume in the fermenter", "20").await;
        self.choose("Yeast", "Ale, clean or American type").await;
        self.dated("Brewing day", days).await;
        self.tap("Start").await;
        self.is_at("/pitch").await;
        self.sees(name).await;
        self.place().await.trim_end_matches("pitch").to_owned()
    }

    /// Logs one reading of the batch at that address; the sample was at 20 °C.
    pub async fn log_reading(&self, batch: &str, gravity: &str, days: f64) {
        self.go(&format!("{batch}watch")).await;
        if self.count(".reading-form").await == 0 {
            self.tap("Add a reading").await;
        }
        self.type_into("Hydrometer reads", gravity).await;
        self.type_into("Sample temperature", "20").await;
        self.tap("Temperatures, time and note").await;
        self.dated("Read", days).await;
        self.tap("Save the reading").await;
        self.sees("Reading saved").await;
        self.waits_for_no(".reading-form").await;
    }

    /// Notes that the yeast went in; without a gravity it is asked once more, and pitched all the same.
    pub async fn pitch(&self, batch: &str, days: f64) {
        self.go(&format!("{batch}pitch")).await;
        self.type_into("Wort now", "19").await;
        self.tap("The yeast goes in").await;
        self.dated("Pitched", days).await;
        self.tap("The yeast is in").await;
        let answered = "const said = document.body.innerText;
             return said.includes('since pitching.') || said.includes('Pitch without it')";
        self.wait_until("the pitching is saved or asked about", answered).await;
        if self.screen_text().await.contains("Pitch without it") {
            self.tap("Pitch without it").await;
        }
        self.sees("Pitching saved").await;
    }

    /// Bottles what the form at hand is of: 19 litres in sound glass, 25 days ago, to stand at 20 °C.
    pub async fn bottles(&self) {
        self.type_into("Beer to bottle", "19").await;
        self.type_into("Warmest since it ended", "20").await;
        self.choose("Weakest bottle", "Sound").await;
        self.says(".answer .answer-main", " g ±").await;
        self.tap("Weighed, filled, place, time, note").await;
        self.type_into("Where they will stand", "20").await;
        self.dated("Bottled", 25.0).await;
        self.tap("It is bottled").await;
        self.sees("In the bottle").await;
    }

    /// A batch with these readings (gravity, days ago) over a start of 1.048, pitched 40 days ago, and
    /// the bar that offers the last step back closed. Its address is given, and the page is at Watch.
    ///
    /// It is noted by hand once; another phone then gets a copy of what the first one stored.
    pub async fn brew(&self, name: &str, readings: &[(&str, f64)]) -> String {
        static BREWED: Mutex<Vec<(String, (String, Value))>> = Mutex::new(Vec::new());
        let what = format!("{name} {readings:?}");
        let known = BREWED.lock().unwrap().iter().find(|(known, _)| *known == what).cloned();
        if let Some((_, (batch, stored))) = known {
            self.run(&format!("Object.assign(localStorage, {stored})")).await;
            self.reload().await;
            self.go(&format!("{batch}watch")).await;
            return batch;
        }
        let batch = self.start_batch(name, 40.2).await;
        self.log_reading(&batch, "1.048", 40.1).await;
        self.pitch(&batch, 40.0).await;
        for (gravity, days) in readings {
            self.log_reading(&batch, gravity, *days).await;
        }
        self.tap("Close").await;
        let stored = self.run("return { ...localStorage }").await;
        BREWED.lock().unwrap().push((what, (batch.clone(), stored)));
        batch
    }

    /// Waits until a CSS selector finds nothing.
    pub async fn waits_for_no(&self, selector: &str) {
        let script = format!("return document.querySelector({}) === null", json!(selector));
        self.wait_until(&format!("{selector} is gone"), &script).await;
    }

    /// Waits until the first thing a CSS selector finds says this.
    pub async fn says(&self, selector: &str, words: &str) {
        let script = format!(
            "const text = document.querySelector({})?.innerText ?? '';
             return text.replace(/\\s+/g, ' ').includes({})",
            json!(selector),
            json!(words)
        );
        self.wait_until(&format!("{selector} says {words:?}"), &script).await;
    }

    /// Fails when the page has stopped or complained.
    pub async fn is_well(&self) {
        assert_eq!(self.count("html[data-stopped]").await, 0, "the page has stopped");
        assert_eq!(self.complaints().await, Vec::<String>::new());
    }
}
