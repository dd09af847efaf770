//! Bytes of a file as a spreadsheet or a text editor leaves them, as text.

use encoding_rs::{Encoding, UTF_8, UTF_16BE, UTF_16LE, WINDOWS_1252};

/// The text of a file, and what has to be said about how it was decoded.
pub(crate) struct Decoded {
    /// The text, without a byte order mark.
    pub(crate) text: String,
    /// What a person should know, if anything was not plain UTF-8.
    pub(crate) note: Option<String>,
}

/// Decodes a file: a byte order mark wins, then UTF-8 if it is valid, then UTF-16 if every
/// other byte is zero, then Windows-1252 (which Latin-1 text is also read by).
pub(crate) fn decode(bytes: &[u8]) -> Decoded {
    if let Some((encoding, mark)) = Encoding::for_bom(bytes) {
        return decode_as(encoding, &bytes[mark..], (encoding != UTF_8).then_some("UTF-16"));
    }
    if let Some(encoding) = utf16_without_mark(bytes) {
        return decode_as(encoding, bytes, Some("UTF-16 without its mark"));
    }
    if let Ok(text) = std::str::from_utf8(bytes) {
        return Decoded { text: text.to_owned(), note: None };
    }
    let mut decoded = decode_as(WINDOWS_1252, bytes, None);
    decoded.note = Some(
        "The file is not UTF-8, so it was read as Windows-1252 (Latin-1): look whether accents \
         and fractions such as ½ came out right."
            .to_owned(),
    );
    decoded
}

fn decode_as(encoding: &'static Encoding, bytes: &[u8], called: Option<&str>) -> Decoded {
    let (text, had_errors) = encoding.decode_without_bom_handling(bytes);
    let note = match (called, had_errors) {
        (_, true) => Some(
            "Some characters of the file could not be read; they stand as \u{FFFD}.".to_owned(),
        ),
        (Some(name), false) => Some(format!("The file was read as {name}.")),
        (None, false) => None,
    };
    Decoded { text: text.into_owned(), note }
}

/// Plain Latin text in UTF-16 has a zero in every second byte, which UTF-8 text never has.
fn utf16_without_mark(bytes: &[u8]) -> Option<&'static Encoding> {
    let head = bytes.get(..bytes.len().min(512)).filter(|head| head.len() >= 4)?;
    let zeros =
        |from: usize| head.iter().skip(from).step_by(2).filter(|&&byte| byte == 0).count();
    let (even, odd) = (zeros(0), zeros(1));
    let most = head.len() / 2 * 9 / 10;
    match (even, odd) {
        (0, odd) if odd >= most.max(1) => Some(UTF_16LE),
        (even, 0) if even >= most.max(1) => Some(UTF_16BE),
        _ => None,
    }
}
