//! What can catch a person, and what protects against it.

use crate::terms::words::words;

words! {
    /// How a means of protection works. Types A, B1, B2, C and D of UL 325 (from memory).
    pub enum MeansKind {
        /// The drive senses by itself that it is stopped, and reverses (A).
        Inherent = "inherent",
        /// A photo-eye or other sensor that detects people without touch (B1); a vehicle loop is not one.
        NonContact = "non_contact",
        /// An edge that is pressed (B2).
        Contact = "contact",
        /// Force limiting built into the drive and certified by its maker as protection (C); a breakaway clutch is not one.
        InherentForce = "inherent_force",
        /// Moves only while a control in sight of the gate is held (D).
        ConstantPressure = "constant_pressure",
    }
}

words! {
    /// What closes on what.
    pub enum ZoneKind {
        /// The latch edge on what the gate closes on.
        LeadingEdgeClosing = "leading_edge_closing",
        /// The latch edge on something behind the leaf.
        LeadingEdgeOpening = "leading_edge_opening",
        /// Leaf and post near the hinge.
        HingeSide = "hinge_side",
        /// Leaf and ground.
        Bottom = "bottom",
        /// Elbow and leaf.
        Elbow = "elbow",
        /// Crank and link, closing like scissors.
        ArmScissors = "arm_scissors",
        /// The leaf's length on something behind it.
        BehindLeaf = "behind_leaf",
    }
}
