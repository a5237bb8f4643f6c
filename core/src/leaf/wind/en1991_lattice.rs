//! Plane lattices by EN 1991-1-4: leaves of bars, rails or mesh that are too open for a wall.

/// Force coefficient without end effect by solidity, `(φ, c_f0)`, straight lines between.
const FORCE: [(f64, f64); 4] = [(0.0, 2.0), (0.3, 1.6), (0.6, 1.6), (1.0, 2.0)];

/// Force coefficient of a plane lattice of sharp-edged members on its solid area: `c_f = c_f0·ψ_λ`.
///
/// `solidity` `φ` = solid over gross area, 0…0.8, beyond which the leaf is a wall; `end_effect` `ψ_λ`, 0.5…1: 1 lets no wind round the ends,
/// the careful side. Round members get away with less; the standard sets it by their Reynolds number, and that is not counted here. Worked
/// example: `φ` 0.3107, `ψ_λ` 0.95 give 1.52. Source: EN 1991-1-4:2005 + A1:2010, 7.11 with eq. 7.25 and Fig. 7.33, read as straight lines on
/// or above the curve, from memory; a national annex goes first.
#[must_use]
pub fn en1991_lattice_coefficient(solidity: f64, end_effect: f64) -> f64 {
    let within = |pair: &&[(f64, f64)]| solidity <= pair[1].0;
    let [(low, first), (high, last)] = match FORCE.windows(2).find(within) {
        Some(&[low, high]) => [low, high],
        _ => [FORCE[2], FORCE[3]],
    };
    let share = ((solidity - low) / (high - low)).clamp(0.0, 1.0);
    (first + (last - first) * share) * end_effect
}
