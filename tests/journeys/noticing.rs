//! What a phone notices that a person might not: complaints, requests, barriers.

use serde_json::Value;
use std::path::PathBuf;
use std::{env, fs};

use crate::phone::Phone;

impl Phone {
    /// By how many pixels the page is wider than the screen.
    pub async fn sideways_scroll(&self) -> i64 {
        let script =
            "const root = document.documentElement; return root.scrollWidth - root.clientWidth";
        self.run(script).await.as_i64().expect("a width")
    }

    /// What the browser complained of (errors and warnings, the policy's refusals among them) since last asked.
    pub async fn complaints(&self) -> Vec<String> {
        let log = self.driver().browser_log().await.expect("the browser's log");
        let bad =
            log.into_iter().filter(|entry| entry.level == "SEVERE" || entry.level == "WARNING");
        // The browser looks for one beside whatever is no page of ours.
        let ours = bad.filter(|entry| !entry.message.contains("/favicon.ico"));
        ours.map(|entry| format!("{}: {}", entry.level, entry.message)).collect()
    }

    /// The addresses the page asked for since last asked.
    pub async fn requests(&self) -> Vec<String> {
        let log = self.driver().get_log("performance").await.expect("the browser's log");
        let messages =
            log.iter().filter_map(|entry| serde_json::from_str::<Value>(&entry.message).ok());
        let sent = messages.filter(|m| m["message"]["method"] == "Network.requestWillBeSent");
        let urls = sent
            .filter_map(|m| m["message"]["params"]["request"]["url"].as_str().map(str::to_owned));
        // The browser's own first page is no concern of ours.
        urls.filter(|url| !url.starts_with("chrome:") && !url.starts_with("data:")).collect()
    }

    /// What axe-core finds that keeps people out, one line each: rule, what it says, where.
    pub async fn barriers(&self) -> Vec<String> {
        let source = env::var("FERMENTSIDE_AXE").map(PathBuf::from).unwrap_or_else(|_| {
            let cache =
                PathBuf::from(env::var("HOME").unwrap_or_default()).join(".cache/fermentside");
            cache.join("npm/lib/node_modules/axe-core/axe.min.js")
        });
        let source = fs::read_to_string(source).expect("axe-core is installed: make setup-browser");
        // By the driver, which the page's policy does not bind.
        self.run(&source).await;
        let found = self
            .settle(
                "{ const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
                   const { violations } = await axe.run(document, { runOnly: { type: 'tag', values: tags } });
                   return violations.flatMap((rule) =>
                     rule.nodes.map((node) => `${rule.id}: ${rule.help}: ${node.target.join(' ')}`)); }",
            )
            .await;
        assert!(found.is_array(), "axe-core: {found}");
        lines(&found)
    }
}

/// The texts in a list that a script has given.
pub fn lines(found: &Value) -> Vec<String> {
    let all = found.as_array().cloned().unwrap_or_default();
    all.iter().map(|line| line.as_str().unwrap_or_default().to_owned()).collect()
}
