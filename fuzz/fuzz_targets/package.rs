//! No bytes make the reader of data packages panic, and what it took it can write and read again:
//! as a zip, and as the files of one, parted by the byte 0xff.
#![no_main]

use barm_documents::bundle;
use barm_documents::package::{self, About, TABLES};
use libfuzzer_sys::fuzz_target;

fn again(zip: &[u8]) {
    let Ok(opened) = package::read(zip) else { return };
    let written = package::write(&opened.shared, &About::default());
    let read = package::read(&written).expect("it was just written");
    assert_eq!(read.shared, opened.shared);
}

fuzz_target!(|bytes: &[u8]| {
    again(bytes);
    let resources: Vec<String> = TABLES
        .iter()
        .map(|table| format!("{{\"name\":\"{0}\",\"path\":\"{0}.csv\"}}", table.name))
        .collect();
    let usual = format!("{{\"resources\":[{}]}}", resources.join(","));
    let mut parts = bytes.split(|byte| *byte == 0xff);
    let names: Vec<String> = TABLES.iter().map(|table| format!("{}.csv", table.name)).collect();
    let mut files: Vec<(&str, &[u8])> = Vec::new();
    for name in &names {
        files.push((name, parts.next().unwrap_or_default()));
    }
    files.push(("datapackage.json", parts.next().unwrap_or(usual.as_bytes())));
    again(&bundle::pack(&files));
});
