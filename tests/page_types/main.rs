//! The page's types are the Rust types: `www/app/contract.d.ts` is written from them and checked to be up to date.
//!
//! After a change of a type: `PINTLE_BLESS=1 cargo test -p pintle-tests --test page_types`.

use std::any::TypeId;
use std::collections::{BTreeMap, HashSet};
use std::path::Path;

use pintle_core::units::{MarkApart, Quantity, ReadError, System};
use pintle_core::{
    fault::{Invalid, LeftOut},
    job::{FieldRule, Job},
    operators::{OperatorList, ReadOperators},
    plan::{OperatorRanking, Pad, Plan, RankProgress, RunPoint, SetOutAnswer},
};
use pintle_web::drawing::{PlotArea, QrPath, View};
use ts_rs::{Config, TS, TypeVisitor};

const FILE: &str = "../www/app/contract.d.ts";

const HEAD: &str = "\
/**
 * The documents and the binding's values. Written from the Rust types, do not edit; after a change there:
 * PINTLE_BLESS=1 cargo test -p pintle-tests --test page_types
 */
";

/// Declares every type and what it is made of, each once, by name: the generator walks a type's parts in another order after every
/// compilation.
struct Declarations {
    config: Config,
    seen: HashSet<TypeId>,
    by_name: BTreeMap<String, String>,
}

impl TypeVisitor for Declarations {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        if !self.seen.insert(TypeId::of::<T>()) {
            return;
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
        // Types without a file of their own (numbers, lists) have nothing to declare.
        if T::output_path().is_some() {
            let docs = T::docs().unwrap_or_default();
            let declaration = format!("\n{docs}export {}\n", T::decl(&self.config));
            self.by_name.insert(T::name(&self.config), declaration);
        }
    }
}

fn declarations() -> String {
    let mut all = Declarations { config: Config::new(), seen: HashSet::new(), by_name: BTreeMap::new() };
    all.visit::<Job>();
    all.visit::<Plan>();
    all.visit::<Invalid>();
    all.visit::<LeftOut>();
    all.visit::<FieldRule>();
    all.visit::<Quantity>();
    all.visit::<System>();
    all.visit::<ReadError>();
    all.visit::<MarkApart>();
    all.visit::<RunPoint>();
    all.visit::<View>();
    all.visit::<PlotArea>();
    all.visit::<SetOutAnswer>();
    all.visit::<Pad>();
    all.visit::<QrPath>();
    all.visit::<OperatorList>();
    all.visit::<ReadOperators>();
    all.visit::<OperatorRanking>();
    all.visit::<RankProgress>();
    // The generator leaves blanks at the ends of lines.
    let text: String = [HEAD.to_string()].into_iter().chain(all.by_name.into_values()).collect();
    text.lines().map(|line| format!("{}\n", line.trim_end())).collect()
}

#[test]
fn the_pages_types_are_up_to_date() {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(FILE);
    let wanted = declarations();
    if std::env::var_os("PINTLE_BLESS").is_some_and(|bless| bless == "1") {
        std::fs::write(&path, &wanted).expect("the file can be written");
    }
    let found = std::fs::read_to_string(&path).unwrap_or_default();
    let stale = found.lines().zip(wanted.lines()).position(|(found, wanted)| found != wanted);
    assert!(
        found == wanted,
        "www/app/contract.d.ts is not what the Rust types say, from line {}; PINTLE_BLESS=1 writes it anew",
        stale.map_or(found.lines().count().min(wanted.lines().count()) + 1, |line| line + 1),
    );
}

/// Names that the binding's signatures and the page import.
#[test]
fn every_imported_type_is_declared() {
    let text = declarations();
    for name in [
        "Commissioning",
        "CurvePoint",
        "Fault",
        "FieldRule",
        "Finding",
        "Invalid",
        "LeftOut",
        "Job",
        "MarkApart",
        "ListedOperator",
        "Operator",
        "OperatorList",
        "OperatorRanking",
        "Plan",
        "PlotArea",
        "Quantity",
        "Pad",
        "QrPath",
        "RankProgress",
        "ReadError",
        "ReadOperators",
        "SetOutAnswer",
        "Suggestion",
        "System",
        "View",
    ] {
        assert!(text.contains(&format!("export type {name} =")), "{name} is missing");
    }
}
