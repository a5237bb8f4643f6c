//! Both plots' axes: one time axis, edge speed above, shaft torque below.

use kurbo::{Rect, Size};
use pintle_core::plan::{Run, RunPoint};
use pintle_core::units::{Quantity, System};

use crate::drawing::axes::{Axes, margin, ticks_up};
use crate::drawing::ticks;

/// A motor's run that takes longer than this many times the longest prescribed one is cut off.
const REACH: f64 = 2.5;
/// Part of the height that the speed has.
const SPEED: f64 = 0.42;
/// Room beyond the outermost line, as part of the span.
const MARGIN: f64 = 0.09;

/// Axes of both plots.
#[derive(Clone, Debug)]
pub struct Frame {
    /// Edge speed, m/s, by time, s.
    pub speed: Axes,
    /// Shaft torque, N·m, by time, s.
    pub torque: Axes,
    /// Where the time axis ends, s.
    pub until_s: f64,
}

impl Frame {
    /// Lays both plots on a surface. There is at least one run.
    pub fn new(runs: &[Run], size: Size, text_size: f64, system: System) -> Frame {
        let longest = |motor: bool| {
            let times = runs.iter().filter(|run| run.state.is_some() == motor).map(Run::time_s);
            times.fold(0.0, f64::max)
        };
        let until_s = longest(false).max(longest(true).min(REACH * longest(false)));
        let rows = || runs.iter().flat_map(|run| &run.rows);
        let span = |value: fn(&RunPoint) -> f64| {
            let (low, high) =
                rows().map(value).fold((0.0, 0.0), |(low, high): (f64, f64), v| (low.min(v), high.max(v)));
            let room = MARGIN * (high - low).max(1e-6);
            (if low < 0.0 { low - room } else { 0.0 }, high + room)
        };
        let (speeds, torques) = (span(|row| row.edge_speed_m_s), span(|row| row.shaft_torque_n_m));
        let line = 1.35 * text_size;
        let (top, bottom) = (2.0 * line + 4.0, size.height - 2.0 * line - 8.0);
        let gap = line + 8.0;
        let split = top + SPEED * (bottom - top - gap);
        let [speed_unit, torque_unit] = [Quantity::Speed, Quantity::Torque].map(|of| of.unit(system).factor);
        let up = [
            ticks_up(speeds, speed_unit, split - top, text_size),
            ticks_up(torques, torque_unit, bottom - split - gap, text_size),
        ];
        let left = margin(&up[0], text_size).max(margin(&up[1], text_size));
        let right = size.width - 0.9 * text_size;
        let across = ticks::decimal((0.0, until_s), ((right - left) / (4.2 * text_size)) as usize);
        let [speed_up, torque_up] = up;
        let plot = |top: f64, bottom: f64| Rect::new(left, top, right, bottom);
        Frame {
            speed: Axes::new(plot(top, split), until_s, speeds, across.clone(), speed_up, speed_unit),
            torque: Axes::new(plot(split + gap, bottom), until_s, torques, across, torque_up, torque_unit),
            until_s,
        }
    }
}
