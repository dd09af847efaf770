//! From bytes to text, and the mistakes that make a text no TOML.

use super::mistake::Wrong;
use super::notes::Notes;
use toml::Spanned;
use toml::de::DeTable;

/// A plan of a large school has about a hundred kilobytes.
const LARGEST: usize = 2_000_000;
/// How much text is read again in search of further mistakes.
const PATIENCE: usize = 8_000_000;

/// The text in the bytes of a file, without a byte order mark.
///
/// # Errors
/// Offset of the first byte that is at fault, with what is wrong.
pub(crate) fn text_of(bytes: &[u8]) -> Result<&str, (usize, Wrong)> {
    if bytes.len() > LARGEST {
        let what =
            format!("the file has {} bytes and is far too long to be a plan", bytes.len());
        return Err((0, Wrong::new(what, "check that this is the right file")));
    }
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        let what = "the file is in UTF-16";
        return Err((0, Wrong::new(what, "save it again as plain text in UTF-8")));
    }
    let bytes = bytes.strip_prefix(&[0xEF, 0xBB, 0xBF]).unwrap_or(bytes);
    std::str::from_utf8(bytes).map_err(|error| {
        let at = error.valid_up_to();
        let byte = bytes.get(at).copied().unwrap_or_default();
        let what = format!("byte {byte:#04X} is not text in UTF-8");
        (at, Wrong::new(what, "save the file again as plain text in UTF-8"))
    })
}

/// Takes out every line that is not TOML, noting why, until the rest can be read.
///
/// Blanked lines keep their length, so that places in the result are places in the text.
pub(crate) fn mend(text: &str, notes: &mut Notes<'_>) -> String {
    let mut mended = text.to_owned();
    let mut patience = PATIENCE;
    loop {
        let (_, errors) = DeTable::parse_recoverable(&mended);
        if errors.is_empty() {
            return mended;
        }
        notes.broken = true;
        let mut blanked: Vec<std::ops::Range<usize>> = Vec::new();
        let mut unclosed = false;
        for error in &errors {
            let at = error.span().map_or(0, |span| span.start);
            let line = notes.lines().line_at(at);
            unclosed |= error.message().contains("unclosed") || line.is_empty();
            if blanked.contains(&line) {
                continue;
            }
            notes.wrong_at(at, None, explain(error.message()));
            blanked.push(line);
        }
        // What is not closed swallows what follows: no further mistake could be believed.
        patience = patience.saturating_sub(mended.len());
        for line in blanked {
            let spaces = " ".repeat(line.len());
            mended.replace_range(line, &spaces);
        }
        if unclosed || patience == 0 || errors.len() > 100 {
            return mended;
        }
    }
}

/// Reads what [`mend`] has left.
pub(crate) fn table(mended: &str) -> Spanned<DeTable<'_>> {
    DeTable::parse_recoverable(mended).0
}

/// Says in plain words what the TOML parser found.
fn explain(message: &str) -> Wrong {
    let fix = if message.contains("duplicate") {
        "a key may be written once in its table: take one of them out"
    } else if message.contains("recurs") {
        "take out the nested brackets"
    } else if message.contains("string") {
        "write texts between straight quotes on one line, such as \"40 mL\""
    } else if message.contains("date") || message.contains("time") {
        "write dates like 2027-03-09 and times like \"08:10\""
    } else if message.contains("key with no value") {
        "write key = value, or put # in front of a note"
    } else if message.contains("array") || message.contains("table") {
        "close every bracket that was opened"
    } else {
        "write key = value; texts and amounts stand between straight quotes"
    };
    Wrong::new(format!("this is not TOML: {message}"), fix)
}
