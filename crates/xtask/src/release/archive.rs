//! Packed files that are the same bytes whenever and wherever the same things are packed.

use super::Piece;
use crate::Outcome;
use std::io::{Cursor, Write as _};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, DateTime, System, ZipWriter};

/// A zip of these pieces, in the order of their names, all with the earliest time a zip can state.
///
/// # Errors
///
/// When two pieces have one name, or a piece is larger than the format can hold.
pub(super) fn zip(mut pieces: Vec<Piece>) -> Outcome<Vec<u8>> {
    pieces.sort_by(|one, other| one.name.cmp(&other.name));
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for piece in pieces {
        let options = SimpleFileOptions::default()
            .compression_method(CompressionMethod::Deflated)
            .compression_level(Some(9))
            .last_modified_time(DateTime::DEFAULT)
            // Otherwise the system of whoever packs would be written down.
            .system(System::Unix)
            .unix_permissions(piece.mode());
        writer.start_file(piece.name, options)?;
        writer.write_all(&piece.bytes)?;
    }
    Ok(writer.finish()?.into_inner())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read as _;
    use zip::ZipArchive;

    fn pieces() -> Vec<Piece> {
        vec![Piece::program("bin/run", *b"run"), Piece::new("a.html", *b"<p>")]
    }

    #[test]
    fn order_of_packing_does_not_matter() {
        let turned = pieces().into_iter().rev().collect();
        assert_eq!(zip(pieces()).unwrap(), zip(turned).unwrap());
    }

    #[test]
    fn content_rights_and_time_are_in_it() {
        let mut packed = ZipArchive::new(Cursor::new(zip(pieces()).unwrap())).unwrap();
        let mut seen = Vec::new();
        for at in 0..packed.len() {
            let mut file = packed.by_index(at).unwrap();
            let mut text = String::new();
            file.read_to_string(&mut text).unwrap();
            let rights = file.unix_mode().unwrap() & 0o777;
            assert_eq!(file.last_modified().unwrap().to_string(), "1980-01-01 00:00:00");
            seen.push((file.name().unwrap().into_owned(), text, rights));
        }
        assert_eq!(
            seen,
            [
                ("a.html".to_owned(), "<p>".to_owned(), 0o644),
                ("bin/run".to_owned(), "run".to_owned(), 0o755)
            ]
        );
    }

    #[test]
    fn one_name_twice_is_refused() {
        assert!(zip(vec![Piece::new("a", *b"1"), Piece::new("a", *b"2")]).is_err());
    }
}
