//! Reads the head of the file.

use super::Header;
use super::group::Group;
use super::number::{integer, shorten};
use super::reader::Reader;
use crate::LengthUnit;
use crate::keys::FORMAT;

pub(super) fn read(reader: &mut Reader<'_>, root: &Group<'_>) -> Header {
    format(reader, root);
    let title = reader.line(root, "title").map(|read| read.value).unwrap_or_default();
    let date = reader.line(root, "date").map(|read| read.value);
    let revision = reader.line(root, "revision").map(|read| read.value);
    let region = region(reader, root);
    let show = reader.choice(root, "units", LengthUnit::default()).value;
    Header { title, date, revision, region, show }
}

fn format(reader: &mut Reader<'_>, root: &Group<'_>) {
    reader.value(
        root,
        "format",
        |_| None,
        FORMAT,
        |reader, path, kind, value| {
            let Some(number) = integer(value.get_ref()) else {
                reader.wrong_type(path, kind, value);
                return None;
            };
            if number != FORMAT {
                reader.fault(
                    &value.span(),
                    "unknown-format",
                    format!("This file is of format {number}; format {FORMAT} is the one that can be read"),
                    "Keys may mean something else in another format",
                    format!(
                        "Write format = {FORMAT} if the file was made for it, or use the version that wrote the file"
                    ),
                );
                return None;
            }
            Some(number)
        },
    );
}

/// The region is the name of a folder, so nothing that leads elsewhere may
/// stand in it.
fn region(reader: &mut Reader<'_>, root: &Group<'_>) -> String {
    let Some(read) = reader.line(root, "region") else { return String::new() };
    let plain = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    if read.is_sound() && !read.value.bytes().all(plain) {
        reader.fault(
            &read.span,
            "bad-region",
            format!("\"{}\" is not the name of a region", shorten(&read.value)),
            "It names the folder that words and rules are taken from",
            "Write small letters, digits and dashes, such as \"uk\"",
        );
    }
    read.value
}
