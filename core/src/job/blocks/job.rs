//! The blocks together, and what has to hold between them.

use super::{
    Arm, AsBuilt, BreakawayFacts, Contact, Drag, Ground, Hinges, HoldingFacts, Ice, Leaf, Lean, MOST_OBSTACLES, Marks,
    Migrated, MotionFacts, Obstacle, Operator, OperatorBody, Record, SetOut, Settings, Site, Swing, Tape, Wind,
};
use crate::fault::missing_object;
use crate::job::table::*;
use crate::terms::words::words;
use crate::units::Quantity::{Count, Ratio, ShortLength};
use alloc::{collections::BTreeMap, format, string::String, vec::Vec};

block! {
    /// Everything `plan` needs to know. Serialises to the job document.
    pub struct Job at "" carries "entry" {
        /// Version of the document.
        schema: u32 = schema(),
        /// What the person calls the job.
        title: Option<String> = text(),
        /// Side of the hinge; default right.
        hand: Option<Hand> = word(Hand::WORDS).listed(),
        /// The leaf.
        leaf: Leaf = block(Leaf::BLOCK),
        /// What resists at the hinges.
        hinges: Hinges = choice(Hinges::CHOICE),
        /// Lean of the hinge axis; default none.
        lean: Lean = block(Lean::BLOCK),
        /// The gust the drive must open against.
        wind: Wind = block(Wind::BLOCK),
        /// How far the leaf opens.
        swing: Swing = block(Swing::BLOCK),
        /// What a set-out may choose from; needed for a search.
        setout: Option<SetOut> = block(SetOut::BLOCK),
        /// Crank and link, and where they are fixed; needed for a plan.
        arm: Option<Arm> = block(Arm::BLOCK).unless("setout"),
        /// The operator's ratings.
        operator: Operator = block(Operator::BLOCK),
        /// Rated torque over demand that is asked for; default 1.5 (common practice, from memory).
        required_reserve: Option<f64> = assumed(Ratio, 1.0, 10.0, 1.5) => required_reserve,
        /// How many evenly spaced leaf angles the curve has, both ends included; default 91.
        samples: Option<u32> = assumed(Count, 2.0, 2001.0, 91.0),
        /// The wind the closed leaf, its arm and its anchors must hold; kept apart from the working wind.
        storm: Option<Wind> = block(Wind::BLOCK).twin(),
        /// Drag besides the hinges; default none.
        drag: Option<Drag> = block(Drag::BLOCK),
        /// Ice or wet snow on the leaf; default none.
        ice: Option<Ice> = block(Ice::BLOCK),
        /// The ground under the swing.
        ground: Option<Ground> = block(Ground::BLOCK),
        /// What stands around; given (even empty), the plan has the clearances.
        obstacles: Option<Vec<Obstacle>> = list(&Kind::Block(Obstacle::BLOCK), MOST_OBSTACLES),
        /// Half the width of crank and link in plan, m; default 0.
        arm_half_width_m: Option<f64> = assumed(ShortLength, 0.0, 0.5, 0.0) => arm_half_width,
        /// What is marked out with; given, the plan has the marks.
        marks: Option<Marks> = block(Marks::BLOCK),
        /// How far a tape errs; given, the plan says what that costs.
        tape: Option<Tape> = block(Tape::BLOCK),
        /// What was built; given, the plan says what became of it.
        as_built: Option<AsBuilt> = block(AsBuilt::BLOCK),
        /// How the leaf is to move through time. Needs the operator's shaft speed.
        motion: Option<MotionFacts> = block(MotionFacts::BLOCK),
        /// What lets go before something is overloaded.
        breakaway: Option<BreakawayFacts> = block(BreakawayFacts::BLOCK),
        /// What holds the closed leaf in the storm.
        holding: Option<HoldingFacts> = block(HoldingFacts::BLOCK),
        /// What a force on a person is estimated with.
        contact: Option<Contact> = block(Contact::BLOCK),
        /// The place the gate stands at, and the means of protection.
        site: Option<Site> = block(Site::BLOCK),
        /// What is set at the first power-up.
        settings: Option<Settings> = block(Settings::BLOCK),
        /// What was measured and signed at the gate; given, the plan compares it.
        record: Option<Record> = block(Record::BLOCK),
        /// What a document of an older schema said twice; written by the reader.
        migrated: Option<Migrated> = block(Migrated::BLOCK),
        /// Uncertainty of inputs as a fraction of their value, by path; given (even empty) the plan shows what each input does to the
        /// reserve, ±10 % where nothing is stated.
        uncertainty: Option<BTreeMap<String, f64>> = shares(crate::job::fields),
    }
}

words! {
    /// Where the hinge is for a person on the side the leaf opens towards, facing the gate.
    pub enum Hand {
        /// Hinge at the right.
        Right = "right",
        /// Hinge at the left: mirrors drawings and words, never a number.
        Left = "left",
    }
}

impl Job {
    /// Leaf angle fully open, radians.
    #[must_use]
    pub fn open_rad(&self) -> f64 {
        self.swing.open_deg.to_radians()
    }

    /// Number of rows of the curve.
    #[must_use]
    pub fn samples(&self) -> u32 {
        self.samples.unwrap_or(const { Job::BLOCK.default_of("samples") as u32 })
    }

    /// The arm, where the job is to be planned and not only set out.
    ///
    /// # Errors
    /// [`Invalid`] naming the missing object.
    pub(crate) fn needed_arm(&self) -> Result<&Arm, Invalid> {
        self.arm.as_ref().ok_or_else(|| Invalid { errors: alloc::vec![missing_object("arm")] })
    }

    /// Whether anything of the record is known here. A record of other hands' entries alone is only carried.
    pub(crate) fn has_record(&self) -> bool {
        self.record.as_ref().is_some_and(|record| *record != Record::default())
    }

    /// Limits of the dynamic and the static force on a person, N, whether the job speaks of a contact or not.
    pub(crate) fn force_limits_n(&self) -> [f64; 2] {
        let contact = self.contact.unwrap_or_default();
        [contact.dynamic_limit(), contact.static_limit()]
    }

    /// Paths whose value was not said and is assumed instead. Peak torque, shaft speed and height are not assumed: unknown stays unknown.
    pub(crate) fn assumed(&self) -> Vec<&'static str> {
        let mut paths = Vec::new();
        assumed_paths(self, Job::BLOCK, false, &mut paths);
        // Leaf and arm have a width only where something is held against it.
        let (around, site) = (self.obstacles.is_some(), self.site.is_some());
        paths.retain(|path| match *path {
            "leaf.face_m" | "leaf.thickness_m" => around || site,
            "leaf.heel_m" => around,
            "arm_half_width_m" => around || self.setout.is_some(),
            _ => true,
        });
        // Members have their ice all round: an answer, not an assumption.
        paths.retain(|path| *path != "ice.area_factor" || self.leaf.members.is_none());
        paths
    }

    /// Paths and values of the inputs that can be varied: what a person measures or estimates. Left out are what the person asks for
    /// (samples, required reserve), what no answer uses, and lists.
    pub(crate) fn inputs(&self) -> Vec<(&'static str, f64)> {
        let mut inputs = Vec::new();
        varied(self, Job::BLOCK, &mut inputs);
        inputs
    }

    /// The same job with one input replaced.
    pub(crate) fn with_input(&self, path: &str, replaced: f64) -> Job {
        let mut job = self.clone();
        if let Some(input) = job.number_mut("", path) {
            *input = replaced;
        }
        job
    }

    /// Faults between fields that are each within their own range.
    pub(in crate::job) fn relations(&self) -> Vec<Fault> {
        let mut faults = self.leaf.relations();
        faults.extend(self.hinges.relations());
        faults.extend(self.ramp_fault());
        faults.extend(self.leaf.member_relations());
        faults.extend(self.wind.relations("wind", &self.leaf));
        faults.extend(self.storm.iter().flat_map(|storm| storm.relations("storm", &self.leaf)));
        faults.extend(self.lean.relations());
        if self.motion.is_some() && self.operator.shaft_speed_deg_s.is_none() {
            faults.push(const { Operator::BLOCK.number("shaft_speed_deg_s") }.missing("operator.shaft_speed_deg_s"));
        }
        faults.extend(self.motion.iter().flat_map(MotionFacts::relations));
        if self.holding.is_some() && self.storm.is_none() {
            faults.push(missing_object("storm"));
        }
        faults.extend(self.operator.body.iter().flat_map(OperatorBody::relations));
        faults.extend(self.uncertain_of_nothing());
        faults.extend(self.setout.iter().flat_map(SetOut::relations));
        let obstacles = self.obstacles.iter().flatten().enumerate();
        faults.extend(obstacles.flat_map(|(index, one)| one.place().relations(format_args!("obstacles.{index}"))));
        faults.extend(self.marks.iter().flat_map(Marks::relations));
        faults.extend(self.tape.iter().flat_map(Tape::relations));
        faults
    }

    /// Uncertainties of fields of the table of which this job says nothing that could be uncertain.
    fn uncertain_of_nothing(&self) -> Vec<Fault> {
        if self.uncertainty.iter().flatten().next().is_none() {
            return Vec::new();
        }
        let inputs: Vec<&'static str> = self.inputs().into_iter().map(|(path, _)| path).collect();
        let rules = crate::job::fields();
        let known = |path: &str| rules.iter().any(|rule| rule.path == path) && !inputs.contains(&path);
        let stated = self.uncertainty.iter().flatten().filter(|(path, _)| known(path));
        let fault = |(path, &share): (&String, &f64)| {
            let names = inputs.clone();
            Fault::number(format!("uncertainty.{path}"), FaultCode::NotOneOf, share, Allowed::OneOf { names })
        };
        stated.map(fault).collect()
    }
}
