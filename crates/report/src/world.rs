//! The closed world that typst compiles in: our templates, one report's data and pictures.
//! No file, no network, no clock, no system font can be reached from it.

use std::collections::HashMap;
use std::sync::LazyLock;

use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

/// The main templates, `report.typ`, `paper.typ` and `sheet.typ`, and those that they import.
pub(crate) const TEMPLATES: [(&str, &str); 10] = [
    ("report.typ", include_str!("../templates/report.typ")),
    ("style.typ", include_str!("../templates/style.typ")),
    ("head.typ", include_str!("../templates/head.typ")),
    ("map.typ", include_str!("../templates/map.typ")),
    ("change.typ", include_str!("../templates/change.typ")),
    ("damage.typ", include_str!("../templates/damage.typ")),
    ("quote.typ", include_str!("../templates/quote.typ")),
    ("method.typ", include_str!("../templates/method.typ")),
    ("paper.typ", include_str!("../templates/paper.typ")),
    ("sheet.typ", include_str!("../templates/sheet.typ")),
];

/// The family of the papers, and one that has the letters it lacks, such as Arabic ones.
const FAMILIES: [&str; 2] = ["Libertinus Serif", "DejaVu Sans Mono"];

/// What is the same for every report: library, fonts, parsed templates.
struct Fixed {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    sources: HashMap<FileId, Source>,
}

static FIXED: LazyLock<Fixed> = LazyLock::new(|| {
    let fonts: Vec<Font> = typst_assets::fonts()
        .flat_map(|data| Font::iter(Bytes::new(data)))
        .filter(|font| FAMILIES.contains(&font.info().family.as_str()))
        .collect();
    let source = |(name, text): (&str, &str)| {
        let id = file_id(name);
        (id, Source::new(id, text.to_owned()))
    };
    Fixed {
        library: LazyHash::new(Library::default()),
        book: LazyHash::new(FontBook::from_fonts(&fonts)),
        fonts,
        sources: TEMPLATES.into_iter().map(source).collect(),
    }
});

/// The world of one report.
pub(crate) struct ReportWorld {
    main: FileId,
    files: HashMap<FileId, Bytes>,
}

impl ReportWorld {
    /// A world that sets the template `main`, with these files beside it, named from the root without a slash.
    pub(crate) fn new(main: &str, files: impl IntoIterator<Item = (String, Bytes)>) -> Self {
        let files = files.into_iter().map(|(name, bytes)| (file_id(&name), bytes)).collect();
        Self { main: file_id(main), files }
    }
}

fn file_id(name: &str) -> FileId {
    let path = VirtualPath::new(name).expect("names of files are our own, without dots that climb");
    RootedPath::new(VirtualRoot::Project, path).intern()
}

/// Whether one of the fonts has a letter.
pub(crate) fn has_letter(letter: char) -> bool {
    FIXED.fonts.iter().any(|font| font.info().coverage.contains(u32::from(letter)))
}

impl World for ReportWorld {
    fn library(&self) -> &LazyHash<Library> {
        &FIXED.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &FIXED.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        FIXED.sources.get(&id).cloned().ok_or_else(|| not_found(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        self.files.get(&id).cloned().ok_or_else(|| not_found(id))
    }

    fn font(&self, index: usize) -> Option<Font> {
        FIXED.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

fn not_found(id: FileId) -> FileError {
    FileError::NotFound(id.vpath().get_with_slash().into())
}
