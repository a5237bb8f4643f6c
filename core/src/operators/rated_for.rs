//! What an operator is rated for beside torque: leaves by length and weight, cycles, temperatures.

use super::{DutyRating, LeafLimit, ListedOperator};

impl ListedOperator {
    /// Longest leaf of the table, m, and the most a leaf of a length may weigh, kg: of the rows that reach so far the shortest counts, and of
    /// equals the lightest. `None` without a table; no weight where the leaf is longer than all of it.
    #[must_use]
    pub fn leaf_limit(&self, length_m: f64) -> Option<(f64, Option<f64>)> {
        let rows = self.leaf_limits.as_deref().filter(|rows| !rows.is_empty())?;
        let longest_m = rows.iter().fold(0.0, |most: f64, row| most.max(row.length_m));
        let reach = rows.iter().filter(|row| row.length_m >= length_m);
        let nearest = reach.fold(None, |best: Option<&LeafLimit>, row| match best {
            Some(best) if (best.length_m, best.mass_kg) <= (row.length_m, row.mass_kg) => Some(best),
            _ => Some(row),
        });
        Some((longest_m, nearest.map(|row| row.mass_kg)))
    }

    /// Cycles an hour and a day that it is rated for in air up to a temperature, °C: of the rows that reach so far the coldest counts. Where no
    /// temperature is known, the fewest of any row. Nothing where no row says.
    #[must_use]
    pub fn rated_cycles(&self, hottest_c: Option<f64>) -> [Option<f64>; 2] {
        let rows = self.duty.as_deref().unwrap_or_default();
        let up_to = |row: &DutyRating| row.up_to_c.unwrap_or(f64::INFINITY);
        let coldest_c = hottest_c.map(|hottest_c| {
            rows.iter().map(up_to).filter(|&up_to_c| up_to_c >= hottest_c).fold(f64::INFINITY, f64::min)
        });
        let counts = |row: &&DutyRating| coldest_c.is_none_or(|coldest_c| up_to(row) == coldest_c);
        let fewest = |of: fn(&DutyRating) -> Option<f64>| rows.iter().filter(counts).filter_map(of).reduce(f64::min);
        [fewest(|row| row.cycles_per_hour), fewest(|row| row.cycles_per_day)]
    }

    /// Coldest and hottest air it is made for, °C: what it says, and no hotter than the hottest row of its duty.
    #[must_use]
    pub fn made_for_c(&self) -> [Option<f64>; 2] {
        let rows = self.duty.as_deref().unwrap_or_default();
        let hottest = rows.iter().map(|row| row.up_to_c.unwrap_or(f64::INFINITY)).reduce(f64::max);
        let said = self.temperature_c.map_or(f64::INFINITY, |[_, most]| most);
        let hottest = Some(said.min(hottest.unwrap_or(f64::INFINITY))).filter(|most| most.is_finite());
        [self.temperature_c.map(|[least, _]| least), hottest]
    }
}
