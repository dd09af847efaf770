//! Where connections are encrypted, the bench page opens again without the server; where they are
//! not, nothing changes.

use crate::bench::join;
use crate::browser::{Browser, wait};
use crate::school::{School, Served};
use crate::skip;
use serde_json::json;
use std::path::Path;
use std::process::{Command, Stdio};

/// The digest of a certificate's key by which a browser is told to trust it (RFC 7469, section
/// 2.4), worked out by OpenSSL and not by us.
fn pin(certificate: &Path) -> Option<String> {
    let pipe = "openssl x509 -in \"$0\" -pubkey -noout | openssl pkey -pubin -outform der \
                | openssl dgst -sha256 -binary | openssl base64 -A";
    let mut shell = Command::new("sh");
    let told = shell.args(["-c", pipe]).arg(certificate).stderr(Stdio::null()).output().ok()?;
    let pin = String::from_utf8(told.stdout).ok()?;
    (pin.len() == 44).then_some(pin)
}

/// The program over TLS with its own certificate, and a browser that trusts it.
fn trusted(school: &School, profile: &Path) -> Result<(Served, Browser), &'static str> {
    let served = Served::with(school.folder(), 0, &["--tls"]);
    let pin =
        pin(&school.folder().join("certificate.pem")).ok_or("openssl is not installed")?;
    let trust = format!("--ignore-certificate-errors-spki-list={pin}");
    let browser = Browser::start_with(profile, &[&trust])?;
    Ok((served, browser))
}

const DRAWN: &str = "return document.querySelector('#tabs button') !== null;";
const READY: &str = "return navigator.serviceWorker.controller !== null;";

#[test]
fn over_tls_the_page_opens_again_without_the_server_and_goes_on() {
    let profile = tempfile::tempdir().expect("a folder");
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 8.0)], 245);
    let (served, browser) = match trusted(&school, profile.path()) {
        Ok(both) => both,
        Err(why) => return skip("opening the bench page again over TLS", why),
    };
    join(&browser, &school, &served);
    browser.until(READY);
    let (address, port) = (served.at("/bench"), served.port);
    let policy = "const [address, done] = arguments;
        fetch(address).then((answer) => done(answer.headers.get('content-security-policy')));";
    let strict = browser.run_later(policy, &json!(address));
    let strict = strict.as_str().expect("a policy").to_owned();
    assert!(strict.contains("default-src 'none'") && !strict.contains("unsafe"), "{strict}");
    served.stop();
    browser.open(&address);
    browser.until(DRAWN);
    assert!(browser.text().contains("8 mm"), "what the group had read: {}", browser.text());
    browser.until("return document.querySelector('#notes .away') !== null;");
    // It reads on, and keeps what it reads, opened once more or not.
    browser.click("[data-k='tens-1']");
    browser.click("[data-k='ones-2']");
    browser.until("return document.querySelector('#head .st.kept') !== null;");
    browser.open(&address);
    browser.until(DRAWN);
    browser.until("return document.body.innerText.includes('12 mm');");
    // Both languages are here, though the other was never asked for.
    browser.click("[data-k='lang-es']");
    browser.until("return document.documentElement.lang === 'es';");
    // Back on its clock: the reading is sent once, with the time at which it was made.
    let served = Served::with(school.folder(), port, &["--tls"]);
    browser.until("return document.querySelector('#head .st.saved') !== null;");
    served.stop();
    let record = school.record();
    let twelve: Vec<_> = record
        .iter()
        .filter(|entry| matches!(entry.what, barm_domain::record::What::Reading { height_mm, .. } if (height_mm - 12.0).abs() < 1e-9))
        .collect();
    assert_eq!(twelve.len(), 1, "once on record");
    let late = twelve[0].arrived.duration_since(twelve[0].measured);
    assert!(!late.is_negative(), "measured before it came: {late}");
}

#[test]
fn over_tls_nothing_of_a_group_that_left_opens_again() {
    let profile = tempfile::tempdir().expect("a folder");
    let school = School::new();
    school.has_read(&[(0, 4.0), (4, 8.0)], 245);
    let (served, browser) = match trusted(&school, profile.path()) {
        Ok(both) => both,
        Err(why) => return skip("leaving over TLS", why),
    };
    join(&browser, &school, &served);
    browser.until(READY);
    browser.click("[data-k='pass']");
    browser.click("[data-k='pass-sure']");
    browser.until("return location.pathname === '/join';");
    let left = "const [, done] = arguments;
        (async () => {
            const pages = [];
            for (const name of await caches.keys()) {
                for (const one of await (await caches.open(name)).keys()) pages.push(new URL(one.url).pathname);
            }
            return pages.filter((path) => !path.startsWith('/a/'));
        })().then(done, (error) => done(String(error)));";
    assert_eq!(browser.run_later(left, &json!(null)), json!([]));
    drop(served);
}

#[test]
fn another_program_replaces_the_files_of_the_one_before() {
    let profile = tempfile::tempdir().expect("a folder");
    let school = School::new();
    let (served, browser) = match trusted(&school, profile.path()) {
        Ok(both) => both,
        Err(why) => return skip("another program's files over TLS", why),
    };
    join(&browser, &school, &served);
    browser.until(READY);
    // What a program of before would have left.
    let leave = "const [, done] = arguments;
        caches.open('bench 0123456789ab')
            .then((shelf) => shelf.put('/a/0123456789ab/bench.js', new Response('old')))
            .then(() => navigator.serviceWorker.getRegistration('/bench'))
            .then((worker) => worker.unregister()).then(() => done(true), (error) => done(String(error)));";
    assert_eq!(browser.run_later(leave, &json!(null)), json!(true));
    browser.open(&served.at("/bench"));
    browser.until(DRAWN);
    let names =
        "const [, done] = arguments; caches.keys().then(done, (error) => done(String(error)));";
    wait("the old files to go", || {
        let left = browser.run_later(names, &json!(null));
        let left = left.as_array()?;
        (left.len() == 1 && left[0] != json!("bench 0123456789ab")).then_some(())
    });
}

#[test]
fn without_tls_there_is_no_worker() {
    let profile = tempfile::tempdir().expect("a folder");
    let browser = match Browser::start(profile.path()) {
        Ok(browser) => browser,
        Err(why) => return skip("no worker without TLS", why),
    };
    let school = School::new();
    let served = school.serve(0);
    join(&browser, &school, &served);
    let ask = "const [address, done] = arguments;
        fetch(address).then(async (answer) => {
            const workers = await navigator.serviceWorker.getRegistrations();
            done([answer.status, workers.length]);
        });";
    let said = browser.run_later(ask, &json!(served.at("/bench-worker.js")));
    assert_eq!(said, json!([404, 0]));
}
