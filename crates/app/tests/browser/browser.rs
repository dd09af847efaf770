//! A browser that does what it is told (W3C WebDriver), without a window.

use crate::wire::ask;
use serde_json::{Value, json};
use std::net::TcpListener;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

/// Quiet, without a window, and no slower where another of its windows lies on top.
const ARGUMENTS: [&str; 13] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--mute-audio",
    // As on a phone: they lie on the page and take no room from it.
    "--hide-scrollbars",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-background-timer-throttling",
    "--disable-backgrounding-occluded-windows",
    "--disable-renderer-backgrounding",
];

/// A running browser.
pub(crate) struct Browser {
    port: u16,
    session: String,
    driver: Child,
    /// The browser's own process.
    process: Option<i64>,
}

/// How long is waited for anything before a test gives up. It bounds a wait for something that
/// must come; no test measures time with it.
/// A machine with other work may be ten times as slow as a quiet one.
const PATIENCE: Duration = Duration::from_secs(180);

fn patience_ms() -> u64 {
    PATIENCE.as_secs() * 1000
}

fn found(names: &[&str]) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let folders: Vec<PathBuf> = std::env::split_paths(&path).collect();
    names
        .iter()
        .flat_map(|name| folders.iter().map(move |f| f.join(name)))
        .find(|f| f.is_file())
}

impl Browser {
    /// Starts a browser that keeps what it stores in `profile`; says why where there is none.
    pub(crate) fn start(profile: &Path) -> Result<Self, &'static str> {
        Self::start_with(profile, &[])
    }

    /// Starts a browser with more arguments than every test needs.
    pub(crate) fn start_with(profile: &Path, more: &[&str]) -> Result<Self, &'static str> {
        let driver = found(&["chromedriver"]).ok_or("chromedriver is not installed")?;
        let program = found(&["chromium", "chromium-browser", "google-chrome"]);
        let program = program.ok_or("chromium is not installed")?;
        let port = free_port();
        let driver = Command::new(driver)
            .arg(format!("--port={port}"))
            .arg("--log-level=OFF")
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .map_err(|_| "chromedriver does not start")?;
        let mut browser = Self { port, session: String::new(), driver, process: None };
        wait("the driver", || ask(port, "GET", "/status", None));
        let profile = format!("--user-data-dir={}", profile.display());
        let arguments = ARGUMENTS.into_iter().chain([profile.as_str()]);
        let arguments: Vec<&str> = arguments.chain(more.iter().copied()).collect();
        let wanted = json!({ "capabilities": { "alwaysMatch": {
            "goog:chromeOptions": { "args": arguments, "binary": program },
            "goog:loggingPrefs": { "browser": "SEVERE" },
            // A page that keeps something asks before it is left; tests leave all the same.
            "unhandledPromptBehavior": "accept",
            "timeouts": { "script": patience_ms(), "pageLoad": patience_ms() },
        } } });
        let made = wait("the browser", || {
            let made = ask(port, "POST", "/session", Some(&wanted))?;
            made["value"]["sessionId"].is_string().then_some(made)
        });
        browser.session = made["value"]["sessionId"].as_str().unwrap_or_default().to_owned();
        browser.process = made["value"]["capabilities"]["goog:processID"].as_i64();
        Ok(browser)
    }

    fn tell(&self, path: &str, body: &Value) -> Value {
        self.call("POST", path, Some(body))
    }

    fn call(&self, method: &str, path: &str, body: Option<&Value>) -> Value {
        let path = format!("/session/{}{path}", self.session);
        let answer = ask(self.port, method, &path, body).expect("the driver answers");
        let value = answer["value"].clone();
        assert!(value.get("error").is_none(), "{path} {body:?}: {value}");
        value
    }

    /// Opens an address.
    pub(crate) fn open(&self, address: &str) {
        self.tell("/url", &json!({ "url": address }));
    }

    /// What went wrong in scripts since it was asked last, and what the policy of a page forbade;
    /// not what could not be loaded, which may be meant.
    pub(crate) fn complaints(&self) -> Vec<String> {
        let log = self.tell("/se/log", &json!({ "type": "browser" }));
        let lines = log.as_array().expect("a list").iter();
        let lines = lines.filter_map(|line| line["message"].as_str().map(str::to_owned));
        lines.filter(|says| !says.contains("Failed to load resource")).collect()
    }

    /// Goes to the page before, as its button does.
    pub(crate) fn back(&self) {
        self.tell("/back", &json!({}));
    }

    /// Opens another window and gives its handle; [`Self::turn_to`] goes there.
    pub(crate) fn window(&self) -> String {
        let made = self.tell("/window/new", &json!({ "type": "window" }));
        made["handle"].as_str().expect("a handle").to_owned()
    }

    /// Closes the window; [`Self::turn_to`] another then.
    pub(crate) fn close(&self) {
        self.call("DELETE", "/window", None);
    }

    /// The window in which everything happens now.
    pub(crate) fn here(&self) -> String {
        self.call("GET", "/window", None).as_str().expect("a handle").to_owned()
    }

    /// From now on everything happens in this window.
    pub(crate) fn turn_to(&self, window: &str) {
        self.tell("/window", &json!({ "handle": window }));
    }

    /// The markup that the server gives for the address of this page; none where there is only
    /// what a form led to, or no network.
    pub(crate) fn served(&self) -> Option<String> {
        let script = "const [, done] = arguments;
             fetch(location.href, { headers: { accept: 'text/html' } })
                .then(async (answer) => {
                    const page = answer.headers.get('content-type')?.startsWith('text/html');
                    done(page ? await answer.text() : null);
                })
                .catch(() => done(null));";
        self.run_later(script, &json!(null)).as_str().map(str::to_owned)
    }

    /// A picture of the whole page (PNG, in base64).
    pub(crate) fn picture(&self) -> String {
        let how = json!({ "format": "png", "captureBeyondViewport": true });
        let picture = self.special("Page.captureScreenshot", &how);
        picture["data"].as_str().expect("a picture").to_owned()
    }

    /// Runs a script in the page and gives what it returns.
    pub(crate) fn run(&self, script: &str) -> Value {
        self.tell("/execute/sync", &json!({ "script": script, "args": [] }))
    }

    /// Runs a script whose last argument is called with its answer.
    pub(crate) fn run_later(&self, script: &str, argument: &Value) -> Value {
        self.tell("/execute/async", &json!({ "script": script, "args": [argument] }))
    }

    /// A command of the browser's own.
    pub(crate) fn special(&self, command: &str, with: &Value) -> Value {
        self.tell("/goog/cdp/execute", &json!({ "cmd": command, "params": with }))
    }

    /// Gives the network to this window, or takes it away.
    pub(crate) fn network(&self, on: bool) {
        self.special("Network.enable", &json!({}));
        let how = json!({
            "offline": !on, "latency": 0, "downloadThroughput": -1, "uploadThroughput": -1,
        });
        self.special("Network.emulateNetworkConditions", &how);
        // A line that was opened before may be spared by that.
        let blocked = if on { json!([]) } else { json!(["*"]) };
        self.special("Network.setBlockedURLs", &json!({ "urls": blocked }));
    }

    /// Makes the window this wide and high (CSS pixels).
    pub(crate) fn size(&self, width: u32, height: u32) {
        let size = json!({ "width": width, "height": height, "deviceScaleFactor": 1, "mobile": false });
        self.special("Emulation.setDeviceMetricsOverride", &size);
    }

    /// Waits until a script returns something that is neither false nor nothing.
    pub(crate) fn until(&self, script: &str) -> Value {
        let seen = || {
            let (text, wrong) = (self.text(), self.complaints());
            format!("{script}\nScripts say: {wrong:?}\nThe page says:\n{text}")
        };
        wait_or(seen, || {
            let value = self.run(script);
            (!value.is_null() && value != Value::Bool(false)).then_some(value)
        })
    }

    /// Clicks what a selector finds, once it is there.
    pub(crate) fn click(&self, selector: &str) {
        let find = format!("const one = document.querySelector({}); ", json!(selector));
        self.until(&format!("{find} return one !== null && one.ariaDisabled !== 'true';"));
        self.run(&format!("{find} one.click();"));
    }

    /// Presses keys as a keyboard does.
    pub(crate) fn press(&self, keys: &str) {
        let presses: Vec<Value> = keys
            .chars()
            .flat_map(|key| {
                ["keyDown", "keyUp"]
                    .map(|kind| json!({ "type": kind, "value": key.to_string() }))
            })
            .collect();
        let actions =
            json!({ "actions": [{ "type": "key", "id": "keys", "actions": presses }] });
        self.tell("/actions", &actions);
    }

    /// Presses a key while another is held down.
    pub(crate) fn press_with(&self, held: char, key: &str) {
        let press = |kind: &str, key: &str| json!({ "type": kind, "value": key });
        let held = held.to_string();
        let presses = json!([
            press("keyDown", &held),
            press("keyDown", key),
            press("keyUp", key),
            press("keyUp", &held),
        ]);
        let actions =
            json!({ "actions": [{ "type": "key", "id": "keys", "actions": presses }] });
        self.tell("/actions", &actions);
    }

    /// The text of the page as somebody sees it.
    pub(crate) fn text(&self) -> String {
        self.run("return document.body.innerText;").as_str().unwrap_or_default().to_owned()
    }

    /// Ends the browser at once, as when the battery falls out.
    pub(crate) fn kill(mut self) {
        if let Some(process) = self.process.take() {
            let _ = Command::new("kill").args(["-9", &process.to_string()]).status();
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
        self.session.clear();
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if !self.session.is_empty() {
            let _ = ask(self.port, "DELETE", &format!("/session/{}", self.session), None);
        }
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// Asks again and again until there is an answer.
pub(crate) fn wait<T>(what: &str, there: impl FnMut() -> Option<T>) -> T {
    wait_or(|| what.to_owned(), there)
}

/// The same; what was waited for is put in words only if it does not come.
fn wait_or<T>(what: impl Fn() -> String, mut there: impl FnMut() -> Option<T>) -> T {
    let end = Instant::now() + PATIENCE;
    loop {
        if let Some(value) = there() {
            return value;
        }
        assert!(Instant::now() < end, "waited in vain for: {}", what());
        std::thread::sleep(Duration::from_millis(50));
    }
}

/// A port that is free now.
pub(crate) fn free_port() -> u16 {
    let listener = TcpListener::bind(("127.0.0.1", 0)).expect("a free port");
    listener.local_addr().expect("its number").port()
}
