//! What a text stands for as the value of a key.

use crate::keys::Kind;
use toml_edit::Value;

/// The value of a text: what it would be in the file, or else the text itself
/// without its quotes, as people write `8.4 m` or `level`.
pub(super) fn of_text(kind: &Kind, text: &str) -> Value {
    let text = text.trim();
    let written = text.parse::<Value>().ok();
    let fits = |value: &Value| match kind {
        Kind::Text | Kind::Folder | Kind::Word(_) | Kind::Wall => value.is_str(),
        // 12:12 would pass for a time of day, but is a pitch here.
        _ => !value.is_datetime(),
    };
    written.filter(fits).unwrap_or_else(|| Value::from(text))
}

/// The group of a text in braces; `None` if it is none.
pub(super) fn group_of_text(text: &str) -> Option<Value> {
    text.trim().parse::<Value>().ok().filter(Value::is_inline_table)
}
