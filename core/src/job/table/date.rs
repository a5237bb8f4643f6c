//! Days of the calendar.

/// Whether a text is a day of the calendar as ISO 8601 writes it.
pub fn is_date(text: &str) -> bool {
    let bytes = text.as_bytes();
    let digits = |from: usize, to: usize| {
        bytes[from..to]
            .iter()
            .try_fold(0, |number, byte| byte.is_ascii_digit().then(|| 10 * number + u32::from(byte - b'0')))
    };
    if bytes.len() != 10 || bytes[4] != b'-' || bytes[7] != b'-' {
        return false;
    }
    match (digits(0, 4), digits(5, 7), digits(8, 10)) {
        (Some(year), Some(month @ 1..=12), Some(day @ 1..)) => {
            let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
            let days = match month {
                2 if leap => 29,
                2 => 28,
                4 | 6 | 9 | 11 => 30,
                _ => 31,
            };
            day <= days
        }
        _ => false,
    }
}
