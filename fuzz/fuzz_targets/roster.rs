//! No bytes make the reader of rosters panic: as a zip, and as the tables of a sound one, parted by
//! the byte 0xff, for no chance makes a zip with right checksums.
#![no_main]

use barm_documents::{bundle, roster};
use jiff::civil::date;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|bytes: &[u8]| {
    let day = date(2027, 3, 9);
    let _ = roster::read(bytes, day);
    let manifest = b"propertyName,value\noneroster.version,1.2\nfile.users,bulk\nfile.classes,bulk\n\
                     file.enrollments,bulk\n";
    let mut tables = bytes.split(|byte| *byte == 0xff);
    let mut next = || tables.next().unwrap_or_default();
    let files = [
        ("users.csv", next()),
        ("classes.csv", next()),
        ("enrollments.csv", next()),
        ("manifest.csv", tables.next().unwrap_or(manifest)),
    ];
    if let Err(refused) = roster::read(&bundle::pack(&files), day) {
        assert!(!refused.to_string().contains('\n'));
    }
});
