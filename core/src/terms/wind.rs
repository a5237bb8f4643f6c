//! What surrounds the gate and what it looks like, in the words of the wind standards.

use crate::terms::words::words;

words! {
    /// Edition of the standard: it decides what load level the mapped speeds have, and the profile.
    pub enum Asce7Edition {
        /// ASCE 7-05: speeds at allowable-stress level, importance factor in the pressure.
        E05 = "7-05",
        /// ASCE 7-10: strength-level speeds by risk category.
        E10 = "7-10",
        /// ASCE 7-16.
        E16 = "7-16",
        /// ASCE 7-22: new profile constants.
        E22 = "7-22",
    }
}

words! {
    /// Load level a pressure is wanted at. Never mixed silently: the job names it.
    pub enum LoadLevel {
        /// To be compared with strengths (load and resistance factor design).
        Strength = "strength",
        /// To be compared with allowable stresses and working ratings.
        Allowable = "allowable",
    }
}

words! {
    /// Exposure category of the surroundings.
    pub enum Exposure {
        /// Towns, woods.
        B = "B",
        /// Open country.
        C = "C",
        /// Flat coast, mud flats.
        D = "D",
    }
}

words! {
    /// What the bars of an open lattice look like to the wind.
    pub enum BarShape {
        /// Flat-sided.
        Flat = "flat",
        /// Round.
        Round = "round",
    }
}

words! {
    /// Terrain category.
    pub enum Terrain {
        /// Sea, coast open to the sea.
        Sea = "0",
        /// Lakes, flat country without obstacles.
        I = "I",
        /// Low vegetation, obstacles twenty heights apart.
        II = "II",
        /// Villages, suburbs, woods.
        III = "III",
        /// Towns.
        IV = "IV",
    }
}
