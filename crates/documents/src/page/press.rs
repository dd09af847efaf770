//! The layout engine's small world: one template and what it imports, the values, our fonts.

use std::sync::LazyLock;

use serde_json::{Value, json};
use typst::diag::{FileError, FileResult, SourceDiagnostic};
use typst::foundations::{Bytes, Datetime, Duration, Smart};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World, WorldExt};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

use crate::catalog::Catalog;
use crate::chart::{Frame, Look, mark};

use super::fonts::{BOOK, FONTS};
use super::proof;
use super::{Paper, PdfError};

static LIBRARY: LazyLock<LazyHash<Library>> =
    LazyLock::new(|| LazyHash::new(Library::builder().build()));

/// The mark of every look that differs, for use in tables.
static MARKS: LazyLock<Vec<String>> = LazyLock::new(|| {
    (0..=16).map(|look| mark(Look(look), 18.0, &Frame::print(18.0))).collect()
});

/// The files that a template may import, by name: the house, and parts of pages that several sheets
/// share.
const SHARED: [(&str, &str); 5] = [
    ("/house.typ", include_str!("house.typ")),
    ("/hand.typ", include_str!("hand.typ")),
    ("/prep-parts.typ", include_str!("../sheet/prep-parts.typ")),
    ("/forecast-parts.typ", include_str!("../sheet/forecast-parts.typ")),
    ("/run-parts.typ", include_str!("../sheet/run-parts.typ")),
];

struct Desktop {
    main: Source,
    shared: Vec<Source>,
    values: (FileId, Bytes),
}

fn name(path: &str) -> Option<FileId> {
    let path = VirtualPath::new(path).ok()?;
    Some(FileId::new(RootedPath::new(VirtualRoot::Project, path)))
}

impl Desktop {
    fn new(template: &str, values: Vec<u8>) -> Option<Self> {
        let shared = SHARED
            .iter()
            .map(|(path, text)| Some(Source::new(name(path)?, (*text).to_owned())));
        Some(Self {
            main: Source::new(name("/sheet.typ")?, template.to_owned()),
            shared: shared.collect::<Option<_>>()?,
            values: (name("/values.json")?, Bytes::new(values)),
        })
    }
}

impl World for Desktop {
    fn library(&self) -> &LazyHash<Library> {
        &LIBRARY
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &BOOK
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        std::iter::once(&self.main)
            .chain(&self.shared)
            .find(|source| source.id() == id)
            .cloned()
            .ok_or(FileError::AccessDenied)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        if id == self.values.0 {
            Ok(self.values.1.clone())
        } else {
            Err(FileError::AccessDenied)
        }
    }

    fn font(&self, index: usize) -> Option<Font> {
        FONTS.get(index).cloned()
    }

    // A page that knew the date would differ from day to day; dates come in as values.
    fn today(&self, _: Option<Duration>) -> Option<Datetime> {
        None
    }
}

/// What the engine said, with the line of the template, which is what whoever mends it needs first.
fn said(desktop: &Desktop, diagnostics: &[SourceDiagnostic]) -> String {
    let line = |one: &SourceDiagnostic| {
        let source = desktop.source(one.span.id()?).ok()?;
        let line = source.lines().byte_to_line(desktop.range(one.span)?.start)?;
        Some(format!(" ({}:{})", source.id().vpath().get_without_slash(), line + 1))
    };
    let messages = diagnostics
        .iter()
        .map(|one| format!("{}{}", one.message, line(one).unwrap_or_default()));
    messages.collect::<Vec<_>>().join("; ")
}

/// Sets `values` with `template` and returns the PDF; `sheet` names the sheet in errors.
///
/// The PDF is tagged and keeps to PDF/UA-1 (ISO 14289-1), or it is not made at all.
pub(crate) fn press(
    sheet: &'static str,
    template: &str,
    mut values: Value,
    paper: Paper,
) -> Result<Vec<u8>, PdfError> {
    let replaced = proof::read(&mut values);
    let language = values["imprint"]["language"].as_str().unwrap_or_default();
    let words = Catalog::of(language);
    let title = title_of(&values, words);
    let values = json!({
        "sheet": values,
        "paper": paper.name(),
        "marks": *MARKS,
        "words": {
            "sheet": words.say("page-sheet"),
            "of": words.say("page-of"),
            "continued": words.say("page-continued"),
            "invented": words.say("page-invented"),
            "rehearsal": words.say("page-rehearsal"),
            "not-printed": words.say("page-not-printed"),
        },
        "replaced": replaced,
    });
    let bytes = serde_json::to_vec(&values)
        .map_err(|error| PdfError::Values { sheet, cause: error.to_string() })?;
    let desktop = Desktop::new(template, bytes).ok_or_else(|| PdfError::Layout {
        sheet,
        cause: "a template has no valid name".to_owned(),
    })?;
    let laid_out = typst::compile::<PagedDocument>(&desktop).output;
    let written = match laid_out {
        Err(errors) => Err(PdfError::Layout { sheet, cause: said(&desktop, &errors) }),
        Ok(mut document) => {
            if let Some(title) = title {
                document.info_mut().title = Some(title.into());
            }
            write(sheet, &desktop, &document)
        }
    };
    // The engine remembers every layout for ever unless told to forget, failed ones too.
    comemo::evict(0);
    written
}

/// What the file is called: the name of the part in front of the plan's title, so that somebody who has
/// several open tells them apart. Parts without a name in the catalog keep the title of their page.
fn title_of(values: &Value, words: &Catalog) -> Option<String> {
    let code = values["imprint"]["sheet"].as_str()?.to_lowercase();
    let part = format!("part-{code}");
    let title = values["title"].as_str()?;
    words.has(&part).then(|| format!("{}: {title}", words.say(&part)))
}

fn write(
    sheet: &'static str,
    desktop: &Desktop,
    document: &PagedDocument,
) -> Result<Vec<u8>, PdfError> {
    let failed = |cause| PdfError::Export { sheet, cause };
    let standards = PdfStandards::new(&[PdfStandard::Ua_1])
        .map_err(|error| failed(error.message().to_string()))?;
    let options = PdfOptions {
        creator: Smart::Custom(Some("Barm".to_owned())),
        standards,
        ..PdfOptions::default()
    };
    typst_pdf::pdf(document, &options).map_err(|errors| failed(said(desktop, &errors)))
}
