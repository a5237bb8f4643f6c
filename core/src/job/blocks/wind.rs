//! A wind: the working wind and the storm have the same block and the same rules.

use super::{Asce7Wind, Leaf, WindFrom, WindShape};
use crate::elements::{ASCE7_LEAST_SOLIDITY, EN1991_LEAST_SOLIDITY};
use crate::job::table::*;
use crate::terms::Asce7Edition;
use crate::units::Quantity::{Density, Ratio, ShortLength, Speed};
use alloc::{format, vec::Vec};

block! {
    /// A gust at the gate: plain, or by a standard or a Beaufort number. The same block describes the working wind and the storm.
    #[derive(Copy)]
    pub struct Wind at "wind." also at "storm." {
        /// Gust speed at the gate, m/s; unless `from` says where the gust comes from.
        speed_m_s: Option<f64> = number(Speed, 0.0, 100.0, 12.0).unless("from").varied(),
        /// Force coefficient of the wind area; unless `shape` says what the leaf looks like to the wind.
        force_coefficient: Option<f64> = number(Ratio, 0.0, 4.0, 1.4).unless("shape").varied(),
        /// Air density, kg/m³; default 1.225 (International Standard Atmosphere, sea level).
        air_density_kg_m3: Option<f64> = assumed(Density, 0.5, 2.0, 1.225).varied() => air_density,
        /// Plan direction a wind of fixed bearing blows towards, in the frame of the closed leaf, degrees. The plan then shows that wind too.
        bearing_deg: Option<f64> = direction(90.0),
        /// Where the gust comes from.
        from: Option<WindFrom> = choice(WindFrom::CHOICE),
        /// What the leaf looks like to the wind.
        shape: Option<WindShape> = choice(WindShape::CHOICE),
    }
}

impl Wind {
    /// Faults between fields; `path` is `wind` or `storm`.
    pub(in crate::job) fn relations(&self, path: &str, leaf: &Leaf) -> Vec<Fault> {
        let speed = self.speed_m_s.filter(|_| self.from.is_some());
        let coefficient = self.force_coefficient.filter(|_| self.shape.is_some());
        let twice = [("speed_m_s", speed), ("force_coefficient", coefficient)];
        let said_twice = |(key, value): (&str, Option<f64>)| Some(Fault::said_twice(format!("{path}.{key}"), value?));
        let mut faults: Vec<Fault> = twice.into_iter().filter_map(said_twice).collect();
        if let Some(WindFrom::Asce7(Asce7Wind { edition, importance: Some(importance), .. })) = self.from
            && edition != Asce7Edition::E05
            && importance != 1.0
        {
            // Later editions map a speed for each risk category instead.
            let row = const { Asce7Wind::BLOCK.number("importance") };
            let one = Number { least: Some(1.0), most: Some(1.0), ..row }.allowed();
            let fault = Fault::number(format!("{path}.from.importance"), FaultCode::OutOfRange, importance, one);
            faults.push(fault.example(Example::Number(1.0)));
        }
        if self.shape.is_some() && leaf.height_m.is_none() {
            faults.push(const { Leaf::BLOCK.number("height_m") }.missing("leaf.height_m"));
        }
        faults.extend(self.shape.and_then(|shape| shape.beyond_table(path)));
        faults
    }
}

impl WindShape {
    /// The fault of a leaf that is denser or more open than what the shape's table covers.
    fn beyond_table(&self, path: &str) -> Option<Fault> {
        let (key, value, least, most, quantity) = match self {
            WindShape::Asce7Wall(wall) => ("solidity", wall.solidity, ASCE7_LEAST_SOLIDITY, 1.0, Ratio),
            WindShape::En1991Wall(wall) => ("solidity", wall.solidity, EN1991_LEAST_SOLIDITY, 1.0, Ratio),
            WindShape::En1991Lattice(lattice) => ("solidity", lattice.solidity, 0.0, EN1991_LEAST_SOLIDITY, Ratio),
            WindShape::Asce7Open(open) => ("bar_m", open.bar_m, 0.0, ASCE7_LEAST_SOLIDITY * open.pitch_m, ShortLength),
        };
        let allowed = Allowed::Range { least: Some(least), most: Some(most), quantity };
        let fault = Fault::number(format!("{path}.shape.{key}"), FaultCode::OutsideShape, value, allowed);
        (value < least || value > most).then(|| fault.example(Example::Number(most)))
    }
}
