//! Lines of a plan file as they are put together.

/// A plan file that is being written.
#[derive(Default)]
pub(super) struct Page {
    text: String,
}

impl Page {
    /// A note for people; every line gets its `#`.
    pub(super) fn note(&mut self, note: &str) {
        for line in note.lines() {
            self.text.push_str(if line.is_empty() { "#" } else { "# " });
            self.text.push_str(line);
            self.text.push('\n');
        }
    }

    /// An empty line.
    pub(super) fn gap(&mut self) {
        self.text.push('\n');
    }

    /// A header such as `[base]` or `[[period]]`, with an empty line above.
    pub(super) fn header(&mut self, header: &str) {
        self.gap();
        self.text.push_str(header);
        self.text.push('\n');
    }

    /// A header with a note above it.
    pub(super) fn chapter(&mut self, note: &str, header: &str) {
        self.gap();
        self.note(note);
        self.text.push_str(header);
        self.text.push('\n');
    }

    /// A key with its value, written out already.
    pub(super) fn key(&mut self, key: &str, value: impl AsRef<str>) {
        self.text.push_str(key);
        self.text.push_str(" = ");
        self.text.push_str(value.as_ref());
        self.text.push('\n');
    }

    /// A key with its value and a note on the same line.
    pub(super) fn noted(&mut self, key: &str, value: impl AsRef<str>, note: &str) {
        const COLUMN: usize = 34;
        let line = format!("{key} = {}", value.as_ref());
        let width = line.chars().count();
        let room = COLUMN.saturating_sub(width).max(2);
        self.text.push_str(&line);
        self.text.push_str(&" ".repeat(room));
        self.text.push_str("# ");
        self.text.push_str(note);
        self.text.push('\n');
    }

    /// A key that is written only if there is a value.
    pub(super) fn maybe(&mut self, key: &str, value: Option<impl AsRef<str>>) {
        if let Some(value) = value {
            self.key(key, value);
        }
    }

    /// Any line.
    pub(super) fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    pub(super) fn done(self) -> String {
        self.text
    }
}
