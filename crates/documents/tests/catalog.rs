//! The texts in every language, as they lie in the folder.

use barm_documents::catalog::Catalog;
use std::collections::BTreeSet;

#[test]
fn every_file_of_the_folder_is_a_language_and_every_language_has_its_file() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("src/catalog");
    let files = std::fs::read_dir(folder).expect("the folder of texts");
    let names: BTreeSet<String> = files
        .filter_map(|file| Some(file.ok()?.file_name().to_string_lossy().into_owned()))
        .filter_map(|name| Some(name.strip_suffix(".ftl")?.to_owned()))
        .collect();
    let languages: BTreeSet<String> =
        Catalog::all().map(|catalog| catalog.code().to_owned()).collect();
    assert_eq!(names, languages, "files and languages of the program");
}
