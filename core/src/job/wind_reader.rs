//! Reading a wind: the working wind and the storm have the same block and the same rules.

use super::fault::{Allowed, Example, Fault, FaultCode};
use super::reader::Node;
use super::types::Leaf;
use super::wind_types::{
    Asce7Open, Asce7Wall, Asce7Wind, BeaufortWind, En1991Wall, En1991Wind, Wind, WindFrom, WindShape,
};
use crate::Document;
use crate::leaf::{Asce7Edition, BarShape, EN1991_LEAST_SOLIDITY, Exposure, LoadLevel, Terrain};
use crate::units::Quantity;
use alloc::{format, vec::Vec};

/// More openings than this and ASCE 7's wall is a lattice.
const ASCE7_LEAST_SOLIDITY: f64 = 0.7;

pub(super) fn read_wind(node: Node) -> Option<Wind> {
    let (has_from, has_shape) = (node.has("from"), node.has("shape"));
    let speed_m_s = node.number("speed_m_s");
    let force_coefficient = node.number("force_coefficient");
    let (air_density_kg_m3, bearing_deg) = (node.number("air_density_kg_m3"), node.number("bearing_deg"));
    let from = node.object("from", false).and_then(read_from);
    let shape = node.object("shape", false).and_then(read_shape);
    node.close();
    let complete = (from.is_some() || (!has_from && speed_m_s.is_some()))
        && (shape.is_some() || (!has_shape && force_coefficient.is_some()));
    complete.then_some(Wind { speed_m_s, force_coefficient, air_density_kg_m3, bearing_deg, from, shape })
}

fn read_from(node: Node) -> Option<WindFrom> {
    match node.word("kind", &["beaufort", "asce7", "en1991"], true)? {
        0 => {
            let number = node.number("number").map(|number| number as u32);
            let (gust_factor, height_factor) = (node.number("gust_factor"), node.number("height_factor"));
            node.close();
            Some(WindFrom::Beaufort(BeaufortWind {
                number: number?,
                gust_factor: gust_factor?,
                height_factor: height_factor?,
            }))
        }
        1 => {
            let edition = node.word("edition", &Asce7Edition::NAMES, true).map(|index| Asce7Edition::ALL[index]);
            let level = node.word("level", &LoadLevel::NAMES, true).map(|index| LoadLevel::ALL[index]);
            let exposure = node.word("exposure", &Exposure::NAMES, true).map(|index| Exposure::ALL[index]);
            let (speed_m_s, height_m) = (node.number("speed_m_s"), node.number("height_m"));
            let (topographic, directionality) = (node.number("topographic"), node.number("directionality"));
            let (importance, gust_effect) = (node.number("importance"), node.number("gust_effect"));
            node.close();
            Some(WindFrom::Asce7(Asce7Wind {
                edition: edition?,
                level: level?,
                exposure: exposure?,
                speed_m_s: speed_m_s?,
                height_m: height_m?,
                topographic,
                directionality,
                importance,
                gust_effect,
            }))
        }
        _ => {
            let terrain = node.word("terrain", &Terrain::NAMES, true).map(|index| Terrain::ALL[index]);
            let (basic_m_s, height_m) = (node.number("basic_m_s"), node.number("height_m"));
            let (orography, yearly_probability) = (node.number("orography"), node.number("yearly_probability"));
            node.close();
            Some(WindFrom::En1991(En1991Wind {
                terrain: terrain?,
                basic_m_s: basic_m_s?,
                height_m: height_m?,
                orography,
                yearly_probability,
            }))
        }
    }
}

fn read_shape(node: Node) -> Option<WindShape> {
    match node.word("kind", &["asce7_wall", "asce7_open", "en1991_wall"], true)? {
        0 => {
            let (solidity, clearance) = (node.number("solidity"), node.number("clearance"));
            let eccentric = node.flag("eccentric");
            node.close();
            Some(WindShape::Asce7Wall(Asce7Wall { solidity: solidity?, clearance, eccentric }))
        }
        1 => {
            let bars = node.word("bars", &BarShape::NAMES, true).map(|index| BarShape::ALL[index]);
            let (bar_m, pitch_m) = (node.number("bar_m"), node.number("pitch_m"));
            node.close();
            Some(WindShape::Asce7Open(Asce7Open { bars: bars?, bar_m: bar_m?, pitch_m: pitch_m? }))
        }
        _ => {
            let (solidity, shelter_factor) = (node.number("solidity"), node.number("shelter_factor"));
            let returns = node.flag("returns");
            node.close();
            Some(WindShape::En1991Wall(En1991Wall { solidity: solidity?, returns, shelter_factor }))
        }
    }
}

impl Wind {
    /// Faults between fields; `path` is `wind` or `storm`.
    pub(super) fn relations(&self, path: &str, leaf: &Leaf) -> Vec<Fault> {
        let mut faults = Vec::new();
        let twice = [
            ("speed_m_s", self.speed_m_s.filter(|_| self.from.is_some())),
            ("force_coefficient", self.force_coefficient.filter(|_| self.shape.is_some())),
        ];
        for (key, value) in twice {
            faults.extend(value.map(|value| {
                Fault::new(format!("{path}.{key}"), FaultCode::SaidTwice).found(&Document::Number(value))
            }));
        }
        if let Some(WindFrom::Asce7(Asce7Wind { edition, importance: Some(importance), .. })) = self.from
            && edition != Asce7Edition::E05
            && importance != 1.0
        {
            // Later editions map a speed for each risk category instead.
            let one = Allowed::Range { least: Some(1.0), most: Some(1.0), quantity: Quantity::Ratio };
            let fault = Fault::new(format!("{path}.from.importance"), FaultCode::OutOfRange);
            faults.push(fault.found(&Document::Number(importance)).allowed(one).example(Example::Number(1.0)));
        }
        if self.shape.is_some() && leaf.height_m.is_none() {
            let range = Allowed::Range { least: Some(0.2), most: Some(6.0), quantity: Quantity::Length };
            let fault = Fault::new("leaf.height_m", FaultCode::Missing).allowed(range);
            faults.push(fault.example(Example::Number(1.6)));
        }
        let (key, value, least, most, quantity) = match self.shape {
            Some(WindShape::Asce7Wall(wall)) => ("solidity", wall.solidity, ASCE7_LEAST_SOLIDITY, 1.0, Quantity::Ratio),
            Some(WindShape::En1991Wall(wall)) => {
                ("solidity", wall.solidity, EN1991_LEAST_SOLIDITY, 1.0, Quantity::Ratio)
            }
            Some(WindShape::Asce7Open(open)) => {
                ("bar_m", open.bar_m, 0.0, ASCE7_LEAST_SOLIDITY * open.pitch_m, Quantity::ShortLength)
            }
            None => return faults,
        };
        if value < least || value > most {
            let allowed = Allowed::Range { least: Some(least), most: Some(most), quantity };
            let fault = Fault::new(format!("{path}.shape.{key}"), FaultCode::OutsideShape);
            faults.push(fault.found(&Document::Number(value)).allowed(allowed).example(Example::Number(most)));
        }
        faults
    }
}
