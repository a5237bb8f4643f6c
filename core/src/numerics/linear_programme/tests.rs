//! The programme against the conditions of Karush, Kuhn and Tucker, which are sufficient for a linear one: nothing has to be solved again.

use super::super::fixtures::Dice;
use super::{Active, Programme, ROWS, VARIABLES};
use alloc::vec::Vec;

type Numbers = [f64; VARIABLES];

struct Case {
    cost: Numbers,
    lo: Numbers,
    hi: Numbers,
    rows: Vec<(Numbers, f64)>,
}

fn dot(one: &Numbers, other: &Numbers) -> f64 {
    one.iter().zip(other).map(|(one, other)| one * other).sum()
}

/// A programme with a point inside all rows; some variables fixed, some costs nothing.
fn case(dice: &mut Dice, rows: usize) -> Case {
    let lo: Numbers = core::array::from_fn(|_| dice.between(-2.0, 0.5));
    let hi: Numbers = core::array::from_fn(|i| lo[i] + (dice.between(-0.5, 3.0)).max(0.0));
    let inside: Numbers = core::array::from_fn(|i| dice.between(lo[i], hi[i]));
    let cost = core::array::from_fn(|_| {
        let value = dice.between(-1.0, 1.0);
        if value.abs() < 0.15 { 0.0 } else { value }
    });
    let rows = (0..rows).map(|_| {
        let row: Numbers = core::array::from_fn(|_| dice.between(-1.0, 1.0));
        (row, dot(&row, &inside) + dice.between(0.0, 0.4))
    });
    Case { cost, lo, hi, rows: rows.collect() }
}

fn solved(programme: &mut Programme, case: &Case) -> Numbers {
    programme.clear();
    case.rows.iter().for_each(|(row, limit)| programme.add(row, *limit));
    programme.solve(&case.cost, &case.lo, &case.hi)
}

#[test]
fn no_multiplier_or_slack_speaks_against_the_minimiser() {
    let mut dice = Dice(1);
    let mut programme = Programme::new();
    let mut held = 0;
    for round in 0..300 {
        let case = case(&mut dice, [0, 1, 3, 10, 40][round % 5]);
        let x = solved(&mut programme, &case);
        for (row, limit) in &case.rows {
            assert!(dot(row, &x) <= limit + 1e-9, "a row is exceeded by {}", dot(row, &x) - limit);
        }
        let mut left = case.cost;
        let mut bound = [false; VARIABLES];
        let mut count = 0;
        for active in programme.active() {
            count += 1;
            match active {
                Active::Row(row, share) => {
                    held += 1;
                    assert!(share > -1e-9, "a multiplier pulls: {share}");
                    let (row, limit) = &case.rows[row];
                    assert!(share < 1e-6 || (dot(row, &x) - limit).abs() < 1e-8, "an active row is slack");
                    left.iter_mut().zip(row).for_each(|(left, value)| *left += share * value);
                }
                Active::Bound(i) => bound[i] = true,
            }
        }
        assert_eq!(count, VARIABLES);
        for i in 0..VARIABLES {
            let (low, high) = (x[i] - case.lo[i] < 1e-9, case.hi[i] - x[i] < 1e-9);
            assert!(x[i] >= case.lo[i] && x[i] <= case.hi[i]);
            if !bound[i] {
                assert!(left[i].abs() < 1e-8, "{} left of a free variable's cost", left[i]);
            }
            assert!((left[i] < 1e-8 || low) && (left[i] > -1e-8 || high), "{} pulls from a bound", left[i]);
        }
    }
    assert!(held > 300, "{held} rows active");
}

#[test]
fn a_basis_put_back_says_what_it_said() {
    let mut dice = Dice(7);
    let mut programme = Programme::new();
    let mut first = case(&mut dice, 12);
    solved(&mut programme, &first);
    let (basis, active) = (programme.basis(), programme.active().collect::<Vec<_>>());
    first.cost = first.cost.map(|cost| -cost);
    solved(&mut programme, &first);
    assert_ne!(programme.active().collect::<Vec<_>>(), active);
    programme.put_back(&basis);
    assert_eq!(programme.active().collect::<Vec<_>>(), active);
}

/// The last row there is room for counts, the one beyond it does not.
#[test]
fn rows_beyond_the_room_are_left_out() {
    let mut row = [0.0; VARIABLES];
    let mut case = Case { cost: [-1.0; VARIABLES], lo: [0.0; VARIABLES], hi: [1.0; VARIABLES], rows: Vec::new() };
    row[2] = 1.0;
    case.rows = (0..ROWS - 1).map(|_| (row, 0.9)).collect();
    case.rows.extend([(row, 0.5), (row, 0.25)]);
    let x = solved(&mut Programme::new(), &case);
    assert_eq!(x[2], 0.5);
}
