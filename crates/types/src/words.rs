//! How are counts, decimals and file names written? For every room that makes sentences.

use std::fmt::Display;

/// Defines an enum with each variant and its word on one line: the enum, a list of all variants in that order, and the word
/// of each.
#[macro_export]
macro_rules! worded {
    ($(#[$about:meta])* $name:ident, $(#[$of_word:meta])* $word:ident {
        $($(#[$what:meta])* $variant:ident = $said:literal,)*
    }) => {
        $(#[$about])*
        pub enum $name { $($(#[$what])* $variant,)* }

        impl $name {
            /// All of them, in order.
            pub const ALL: [Self; [$($said),*].len()] = [$(Self::$variant),*];

            $(#[$of_word])*
            pub const fn $word(self) -> &'static str {
                match self { $(Self::$variant => $said,)* }
            }
        }
    };
}

/// `1 pocket`, `3,000 pockets`.
pub fn plural<N: Display + PartialEq + From<u8>>(count: N, one: &str, many: &str) -> String {
    let is_one = count == N::from(1);
    format!(
        "{} {}",
        grouped(&count.to_string()),
        if is_one { one } else { many }
    )
}

/// `never`, `once`, `twice`, `3 times`.
pub fn times(count: usize) -> String {
    match count {
        0 => "never".to_owned(),
        1 => "once".to_owned(),
        2 => "twice".to_owned(),
        _ => plural(count, "time", "times"),
    }
}

/// A number without sign, with commas between thousands.
pub fn grouped(number: &str) -> String {
    let (whole, part) = number.split_at(number.find('.').unwrap_or(number.len()));
    let is_start = |index: usize| index > 0 && (whole.len() - index).is_multiple_of(3);
    let one = |(index, digit): (usize, char)| is_start(index).then_some(',').into_iter().chain([digit]);
    whole
        .chars()
        .enumerate()
        .flat_map(one)
        .chain(part.chars())
        .collect()
}

/// A number with this many decimals; what rounds to zero has no sign.
pub fn decimal(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(zero) if zero.bytes().all(|byte| matches!(byte, b'0' | b'.')) => zero.to_owned(),
        _ => text,
    }
}

/// An error with its causes, each given once.
pub fn with_causes(error: &dyn std::error::Error) -> String {
    let mut text = error.to_string();
    let mut cause = error.source();
    while let Some(error) = cause {
        let more = error.to_string();
        if !text.contains(&more) {
            text.push_str(": ");
            text.push_str(&more);
        }
        cause = error.source();
    }
    text
}

/// The name of a file without its folders, whose names may be private.
pub fn file_name(path: &str) -> &str {
    path.rsplit(['/', '\\'])
        .find(|part| !part.is_empty())
        .unwrap_or(path)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_one_and_all_else_are_many() {
        assert_eq!(plural(0, "fix", "fixes"), "0 fixes");
        assert_eq!(plural(1, "fix", "fixes"), "1 fix");
        assert_eq!(plural(1_234_567_u64, "fix", "fixes"), "1,234,567 fixes");
        assert_eq!(plural(1234.5, "day", "days"), "1,234.5 days");
        assert_eq!(
            [0, 1, 2, 1000].map(times),
            ["never", "once", "twice", "1,000 times"]
        );
    }

    #[test]
    fn zero_has_no_sign_and_a_file_no_folders() {
        assert_eq!(
            [-0.0, -0.04, -0.05, 2.25].map(|value| decimal(value, 1)),
            ["0.0", "0.0", "-0.1", "2.2"]
        );
        assert_eq!(
            ["a.gpx", "/b c/a.gpx", "C:\\b\\a.gpx", "b/", "/"].map(file_name),
            ["a.gpx", "a.gpx", "a.gpx", "b", "/"]
        );
    }
}
