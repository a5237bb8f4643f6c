//! Faults as a programmer's log has them; people get sentences from the string tables.

use super::{Allowed, Example, Fault, FaultCode, Invalid, LeftOut, NamedValue};
use core::fmt::{Display, Formatter, Result};

impl Display for FaultCode {
    /// Its name.
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        write!(f, "{self:?}")
    }
}

impl Display for Allowed {
    /// `1 to 5`, `at least 1`, `one of plain, rolling`, `an object`.
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        match self {
            Allowed::Range { least: Some(least), most: Some(most), .. } => write!(f, "{least} to {most}"),
            Allowed::Range { least: Some(least), most: None, .. } => write!(f, "at least {least}"),
            Allowed::Range { least: None, most: Some(most), .. } => write!(f, "at most {most}"),
            Allowed::Range { least: None, most: None, .. } => f.write_str("any number"),
            Allowed::OneOf { names } => {
                f.write_str("one of ")?;
                separated(f, names, ", ")
            }
            Allowed::Type { name } => write!(f, "of type {name}"),
        }
    }
}

impl Display for Example {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        match self {
            Example::Number(value) => write!(f, "{value}"),
            Example::Text(text) => f.write_str(text),
            Example::Range([least, most]) => write!(f, "{least} to {most}"),
        }
    }
}

impl Display for NamedValue {
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        write!(f, "{} {}", self.name, self.value)
    }
}

impl Display for Fault {
    /// `leaf.mass_kg: OutOfRange, found 0, allowed 1 to 5000, for instance 160`.
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        let path = if self.path.is_empty() { "the document" } else { &self.path };
        write!(f, "{path}: {}", self.code)?;
        let tail: [(&str, Option<&dyn Display>); 3] = [
            ("found", self.found.as_ref().map(|found| found as _)),
            ("allowed", self.allowed.as_ref().map(|allowed| allowed as _)),
            ("for instance", self.example.as_ref().map(|example| example as _)),
        ];
        for (word, value) in tail {
            if let Some(value) = value {
                write!(f, ", {word} {value}")?;
            }
        }
        self.values.iter().try_for_each(|value| write!(f, ", {value}"))
    }
}

impl Display for Invalid {
    /// All faults, `; ` between them.
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        separated(f, &self.errors, "; ")
    }
}

impl Display for LeftOut {
    /// The part and what it needs.
    fn fmt(&self, f: &mut Formatter<'_>) -> Result {
        write!(f, "{} left out: ", self.path)?;
        separated(f, &self.faults, "; ")
    }
}

impl core::error::Error for Fault {}
impl core::error::Error for Invalid {}

fn separated(f: &mut Formatter<'_>, items: &[impl Display], separator: &str) -> Result {
    for (index, item) in items.iter().enumerate() {
        if index > 0 {
            f.write_str(separator)?;
        }
        f.write_fmt(format_args!("{item}"))?;
    }
    Ok(())
}
