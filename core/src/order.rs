//! Order of short lists.

/// Puts a list in order; what is equal stays as it stands. `before(one, other)`: `one` has to come first.
///
/// By insertion, because the lists here are short (findings, gaps, limits: tens at most), and because each type that is sorted by the
/// standard library brings some 7 kB of code into the page's download.
pub(crate) fn insertion_sort<T>(items: &mut [T], before: impl Fn(&T, &T) -> bool) {
    for end in 1..items.len() {
        let mut at = end;
        while at > 0 && before(&items[at], &items[at - 1]) {
            items.swap(at, at - 1);
            at -= 1;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::insertion_sort;
    use alloc::vec::Vec;

    #[test]
    fn the_order_is_the_standard_library_s() {
        let mut seed = 1_u32;
        for length in 0..40 {
            let mut ours: Vec<(u32, usize)> = (0..length)
                .map(|index| {
                    seed = seed.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                    (seed >> 29, index)
                })
                .collect();
            let mut theirs = ours.clone();
            theirs.sort_by_key(|item| item.0);
            insertion_sort(&mut ours, |one, other| one.0 < other.0);
            assert_eq!(ours, theirs);
        }
    }
}
