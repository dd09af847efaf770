//! Small tables of outside values, and how closely ours must agree.

/// One row of a table: its fields, and where it stands for a message.
pub(crate) struct Row<'a> {
    header: &'a [&'a str],
    fields: Vec<&'a str>,
    line: usize,
}

impl<'a> Row<'a> {
    /// The field in the column of that name.
    #[track_caller]
    pub(crate) fn text(&self, column: &str) -> &'a str {
        let place = self.header.iter().position(|name| *name == column).expect(column);
        self.fields[place]
    }

    /// The number in the column of that name.
    #[track_caller]
    pub(crate) fn number(&self, column: &str) -> f64 {
        let text = self.text(column);
        text.parse().unwrap_or_else(|_| panic!("line {}: {column} is {text:?}", self.line))
    }
}

/// Calls `check` with every row of a comma-separated table with comment lines and a header line.
/// A last field with commas in it (the source) is cut; no test looks at it.
pub(crate) fn each(table: &str, mut check: impl FnMut(&Row)) {
    let mut lines =
        table.lines().enumerate().filter(|(_, l)| !l.starts_with('#') && !l.is_empty());
    let (_, header) = lines.next().expect("a header line");
    let header: Vec<&str> = header.split(',').collect();
    let mut seen = 0;
    for (line, text) in lines {
        check(&Row { header: &header, fields: text.split(',').collect(), line: line + 1 });
        seen += 1;
    }
    assert!(seen > 0, "the table has no rows");
}

/// Fails unless `ours` lies within the relative tolerance of `theirs`.
#[track_caller]
pub(crate) fn agrees(what: &str, ours: f64, theirs: f64, within: f64) {
    let off = ours / theirs - 1.0;
    assert!(off.abs() <= within, "{what}: {ours} against {theirs}, off by {off:+.6}");
}
