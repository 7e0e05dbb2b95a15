//! Decimal numbers from bytes, without detours.

/// A decimal as written: its value, and the number of digits after the point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Decimal {
    pub(crate) value: f64,
    pub(crate) decimals: u8,
}

/// Powers of ten that a double holds exactly.
pub(crate) const TEN: [f64; 23] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18,
    1e19, 1e20, 1e21, 1e22,
];

/// Reads a decimal with optional sign, fraction and exponent; surrounding blanks are dropped. The value is the nearest
/// double: up to 15 digits it is one exact division (Clinger 1990), beyond that the standard library decides.
pub(crate) fn decimal(text: &[u8]) -> Option<Decimal> {
    let text = text.trim_ascii();
    let (negative, digits) = match text.first()? {
        b'-' => (true, &text[1..]),
        b'+' => (false, &text[1..]),
        _ => (false, text),
    };
    let mut mantissa = 0_u64;
    let mut seen = 0_usize;
    let mut point = None;
    for (index, &byte) in digits.iter().enumerate() {
        match byte {
            b'0'..=b'9' => {
                mantissa = mantissa.wrapping_mul(10).wrapping_add(u64::from(byte - b'0'));
                seen += 1;
            }
            b'.' if point.is_none() => point = Some(index),
            _ => return slow(text),
        }
    }
    if seen == 0 {
        return None;
    }
    let decimals = point.map_or(0, |at| digits.len() - at - 1);
    if seen > 15 {
        return slow(text);
    }
    let value = mantissa as f64 / TEN[decimals];
    Some(Decimal {
        value: if negative { -value } else { value },
        decimals: decimals as u8,
    })
}

/// The digits at the start of eight bytes: their value and their number. No loop, no branch on the bytes.
#[inline]
pub(crate) fn leading_digits(eight: [u8; 8]) -> (u64, usize) {
    const HIGH: u64 = 0x8080_8080_8080_8080;
    let digits = u64::from_le_bytes(eight) ^ 0x3030_3030_3030_3030;
    // The high bit of a byte is set if the byte is above nine; nothing carries into the next.
    let odd = (((digits & !HIGH) + 0x7676_7676_7676_7676) | digits) & HIGH;
    let count = odd.trailing_zeros() as usize / 8;
    if count == 0 {
        return (0, 0);
    }
    // With zeros before them they form a number of eight digits: into pairs, fours, and all of it.
    let digits = digits << (64 - 8 * count);
    let pairs = (digits * 10).wrapping_add(digits >> 8);
    let low = (pairs & 0x0000_00ff_0000_00ff).wrapping_mul(100 + (1_000_000 << 32));
    let high = ((pairs >> 16) & 0x0000_00ff_0000_00ff).wrapping_mul(1 + (10_000 << 32));
    (low.wrapping_add(high) >> 32, count)
}

/// The eight bytes from a place on; `None` if the text ends before.
#[inline]
pub(crate) fn eight(text: &[u8], at: usize) -> Option<[u8; 8]> {
    text.get(at..at.checked_add(8)?)?.try_into().ok()
}

/// Reads the usual shape of a decimal from a place on, `-12.3456789`: fewer than eight digits before the point, fifteen in
/// all, no exponent. Also returns where it ends. `None` for any other shape, and close to the end of the text: [`decimal`]
/// reads those. The value equals that of [`decimal`].
#[inline]
pub(crate) fn plain_decimal(text: &[u8], at: usize) -> Option<(Decimal, usize)> {
    let negative = *text.get(at)? == b'-';
    let mut at = at + usize::from(negative);
    let (mut mantissa, whole) = leading_digits(eight(text, at)?);
    if whole == 0 || whole == 8 {
        return None;
    }
    at += whole;
    let mut decimals = 0;
    if *text.get(at)? == b'.' {
        at += 1;
        loop {
            let (value, count) = leading_digits(eight(text, at)?);
            decimals += count;
            at += count;
            if whole + decimals > 15 {
                return None;
            }
            mantissa = mantissa * TEN_WHOLE[count] + value;
            if count < 8 {
                break;
            }
        }
    }
    let value = mantissa as f64 / TEN[decimals];
    let decimal = Decimal {
        value: if negative { -value } else { value },
        decimals: decimals as u8,
    };
    Some((decimal, at))
}

/// Powers of ten by the number of digits present out of eight.
pub(crate) const TEN_WHOLE: [u64; 9] = [
    1,
    10,
    100,
    1_000,
    10_000,
    100_000,
    1_000_000,
    10_000_000,
    100_000_000,
];

#[cold]
fn slow(text: &[u8]) -> Option<Decimal> {
    let text = std::str::from_utf8(text).ok()?;
    let value = text.parse::<f64>().ok()?;
    let behind = text
        .split_once('.')
        .map_or(0, |(_, rest)| rest.bytes().take_while(u8::is_ascii_digit).count());
    Some(Decimal {
        value,
        decimals: behind.min(255) as u8,
    })
}

/// A whole number of at most nine digits, with nothing else in the field but blanks.
pub(crate) fn whole(text: &[u8]) -> Option<u32> {
    let text = text.trim_ascii();
    if text.is_empty() || text.len() > 9 {
        return None;
    }
    let mut value = 0_u32;
    for &byte in text {
        if !byte.is_ascii_digit() {
            return None;
        }
        value = value * 10 + u32::from(byte - b'0');
    }
    Some(value)
}

/// How precisely positions were written, from the digits after the point.
///
/// A writer may drop trailing zeros, so the number of digits that at least half of the positions reach is used. Beyond
/// eleven digits of a degree the digits come from a conversion of binary numbers and mean nothing.
#[derive(Clone, Debug, Default)]
pub(crate) struct WrittenSteps {
    counts: [u64; 16],
}

impl WrittenSteps {
    pub(crate) fn add(&mut self, decimals: u8) {
        self.counts[usize::from(decimals.min(15))] += 1;
    }

    /// Adds what was counted elsewhere.
    pub(crate) fn join(&mut self, other: &Self) {
        for (count, more) in self.counts.iter_mut().zip(&other.counts) {
            *count += more;
        }
    }

    fn usual(&self) -> Option<usize> {
        let total: u64 = self.counts.iter().sum();
        let mut reached = 0;
        for decimals in (0..self.counts.len()).rev() {
            reached += self.counts[decimals];
            if reached > 0 && reached * 2 >= total {
                return Some(decimals);
            }
        }
        None
    }

    /// Smallest step in metres, given the metres that one unit of the number represents.
    pub(crate) fn resolution_m(&self, unit_m: f64) -> Option<f64> {
        self.usual()
            .filter(|&decimals| decimals <= 11)
            .map(|decimals| unit_m / TEN[decimals])
    }
}

/// Metres in one minute of latitude: the nautical mile, which was defined as that.
pub(crate) const MINUTE_M: f64 = 1852.0;
/// Metres in one degree of latitude, by the same rule.
pub(crate) const DEGREE_M: f64 = 60.0 * MINUTE_M;

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn decimals_are_read_as_the_standard_library_reads_them() {
        for text in [
            "0",
            "-0",
            "1",
            "-1.5",
            "+2.25",
            ".5",
            "5.",
            "51.057924",
            "-1.321018",
            "37.24173816852271556854248046875",
            "123456789012345",
            "1234567890123456",
            "0.000000000000001",
            "1e2",
            "1.5E-3",
            "-122.4574400",
        ] {
            assert_eq!(
                decimal(text.as_bytes()).unwrap().value,
                text.parse::<f64>().unwrap(),
                "{text}"
            );
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(4000))]

        #[test]
        fn the_usual_shape_is_read_as_the_standard_library_reads_it(
            head in "-?[0-9]{0,9}",
            tail in "(\\.[0-9]{0,16})?",
            behind in "[ -~]{0,1}[<\"',+eE.]{10,11}",
        ) {
            let written = format!("{head}{tail}");
            let text = format!("{written}{behind}");
            let digits = written.bytes().filter(u8::is_ascii_digit).count();
            if let Some((number, end)) = plain_decimal(text.as_bytes(), 0) {
                let taken = &text[..end];
                prop_assert_eq!(number.value.to_bits(), taken.parse::<f64>().unwrap().to_bits(), "{}", taken);
                prop_assert_eq!(Some(number), decimal(taken.as_bytes()));
                prop_assert!(!text.as_bytes()[end].is_ascii_digit());
            } else {
                let whole = head.trim_start_matches('-').len();
                // The byte after it may be one more digit.
                prop_assert!(whole == 0 || whole >= 7 || digits >= 15, "{} was not read", text);
            }
        }

        #[test]
        fn digits_at_the_head_of_eight_bytes_agree_with_a_loop(bytes in any::<[u8; 8]>(), head in "[0-9]{0,8}") {
            let mut eight = bytes;
            eight[..head.len()].copy_from_slice(head.as_bytes());
            let count = eight.iter().take_while(|b| b.is_ascii_digit()).count();
            let value = eight[..count].iter().fold(0, |sum, b| sum * 10 + u64::from(b - b'0'));
            prop_assert_eq!(leading_digits(eight), (value, count));
        }
    }

    #[test]
    fn what_is_no_decimal_is_refused() {
        for text in ["", " ", "-", ".", "1.2.3", "12x", "1 2", "--1", "0x10", "1,5"] {
            assert_eq!(decimal(text.as_bytes()), None, "{text}");
        }
    }

    #[test]
    fn digits_behind_the_point_are_counted() {
        assert_eq!(decimal(b"51.0579").unwrap().decimals, 4);
        assert_eq!(decimal(b"51").unwrap().decimals, 0);
        assert_eq!(decimal(b" 51.50 ").unwrap().decimals, 2);
        assert_eq!(decimal(b"37.24173816852271556854248046875").unwrap().decimals, 29);
    }

    #[test]
    fn the_step_is_the_one_that_half_of_the_positions_reach() {
        let mut steps = WrittenSteps::default();
        assert_eq!(steps.resolution_m(1.0), None);
        for decimals in [4, 4, 3, 4, 2, 4] {
            steps.add(decimals);
        }
        assert_eq!(steps.resolution_m(MINUTE_M), Some(0.1852));
    }
}
