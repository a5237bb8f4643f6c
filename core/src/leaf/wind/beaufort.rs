//! The Beaufort scale: ten-minute means at 10 m over open ground, so never a gust at the gate without two stated factors.

/// Least speed of each number from 1 to 12, m/s.
const LEAST_M_S: [f64; 12] = [0.3, 1.6, 3.4, 5.5, 8.0, 10.8, 13.9, 17.2, 20.8, 24.5, 28.5, 32.7];

/// Slowest and fastest ten-minute mean at 10 m of a Beaufort number, m/s; 12 has no fastest.
///
/// Source: WMO's scale as printed at delta-s.org and meteothes.gr.
#[must_use]
pub fn beaufort_range_m_s(number: u8) -> (f64, Option<f64>) {
    let index = usize::from(number.min(12));
    let least = if index == 0 { 0.0 } else { LEAST_M_S[index - 1] };
    // Printed to tenths: each number ends a tenth below the next.
    (least, LEAST_M_S.get(index).map(|next| libm::round(next * 10.0 - 1.0) / 10.0))
}

/// Beaufort number of a ten-minute mean at 10 m, m/s.
#[must_use]
pub fn beaufort_number(mean_m_s: f64) -> u8 {
    // A mean between the printed tenths belongs to the number it rounds to.
    LEAST_M_S.iter().take_while(|&&least| mean_m_s >= least - 0.05).count() as u8
}
