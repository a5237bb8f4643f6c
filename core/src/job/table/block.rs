//! What a block of the job is, and the tables in which blocks are declared.

use super::{Field, Held, Kind, Number};
use crate::Document;
use alloc::vec::Vec;

/// A block: its fields in the order they are read.
#[derive(Clone, Copy, Debug)]
pub struct Block {
    /// The rows.
    pub fields: &'static [Field],
    /// Keys that are carried and not looked at.
    pub carried: &'static [&'static str],
    /// Whether any other key is carried, too, instead of being refused.
    pub open: bool,
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// A block of one of several kinds, told by a word.
#[derive(Clone, Copy, Debug)]
pub struct Choice {
    /// Key of the word.
    pub tag: &'static str,
    /// The kinds.
    pub kinds: &'static [Chosen],
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// One kind of a block.
#[derive(Clone, Copy, Debug)]
pub struct Chosen {
    /// The word.
    pub name: &'static str,
    /// The fields that belong to it.
    pub block: &'static Block,
    /// What it is, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// A value of a block's type, seen as its rows.
pub trait Fields {
    /// What stands in each field, in the order of the rows.
    fn held(&self) -> Vec<Held<'_>>;
}

const fn same(one: &str, other: &str) -> bool {
    let (one, other) = (one.as_bytes(), other.as_bytes());
    let mut index = 0;
    while index < one.len() && index < other.len() && one[index] == other[index] {
        index += 1;
    }
    index == one.len() && index == other.len()
}

impl Block {
    /// The row of a number or a range. Meant for the compiler, which stops at a name that is in no row.
    pub const fn number(&self, name: &str) -> Number {
        let mut index = 0;
        while index < self.fields.len() {
            let field = &self.fields[index];
            if same(field.name, name) {
                match field.spec.kind {
                    Kind::Number(number) | Kind::Range(number) => return number,
                    _ => panic!("the row is no number"),
                }
            }
            index += 1;
        }
        panic!("no such row")
    }

    /// What the row of a number assumes. Meant for the compiler, as [`Block::number`].
    pub const fn default_of(&self, name: &str) -> f64 {
        match self.number(name).default {
            Some(default) => default,
            None => panic!("the row has no default"),
        }
    }
}

/// The value of a key; `Null` where it is absent. Of a repeated one the first.
pub fn entry<'a>(entries: &'a [(alloc::string::String, Document)], key: &str) -> &'a Document {
    static ABSENT: Document = Document::Null;
    entries.iter().find(|(name, _)| name == key).map_or(&ABSENT, |(_, value)| value)
}

/// Declares a block once: its type, its rows, and where it stands in the document (a path with a dot behind it).
///
/// ```text
/// block! {
///     /// What it is.
///     pub struct Tape at "tape." {
///         /// What the field is, its unit, its default.
///         error_m: Option<f64> = assumed(ShortLength, 0.0001, 0.1, 0.005) => error,
///     }
/// }
/// ```
///
/// A row gives the field of the type, the reader, the published schema, the bounds a job made in code is held to, and the page's hints; `=> error` a
/// method with the value or what is assumed for it. Rows are read, and their faults told, in order. `also at` is the path of a second
/// place with the same rules, `carries` a key that is not looked at, `open` lets any other key pass, `or default` takes silence for the
/// type's default.
macro_rules! block {
    ($(#[$($about:tt)*])* pub struct $block:ident at $at:literal also at $also:literal $($rest:tt)*) => {
        $crate::job::table::block! { @ [$(#[$($about)*])*] $block $at [$also] $($rest)* }
    };
    ($(#[$($about:tt)*])* pub struct $block:ident at $at:literal $($rest:tt)*) => {
        $crate::job::table::block! { @ [$(#[$($about)*])*] $block $at [] $($rest)* }
    };
    (
        @ [$(#[doc = $about:literal])* $(#[derive($($derive:ident),+)])?]
        $block:ident $at:literal $also:tt $(carries $carried:literal)? $(or $default:ident)? $(, $open:ident)? {
            $($(#[doc = $doc:literal])* $name:ident: $ty:ty = $spec:expr $(=> $getter:ident)?,)+
        }
    ) => {
        $(#[doc = $about])*
        #[derive(Clone, Debug, PartialEq, serde::Serialize $($(, $derive)+)?)]
        #[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
        pub struct $block {
            $($(#[doc = $doc])*
            #[serde(skip_serializing_if = "crate::job::table::Value::silent")]
            pub $name: $ty,)+
        }

        impl $block {
            pub(crate) const BLOCK: &'static $crate::job::table::Block = &$crate::job::table::Block {
                fields: &[$($crate::job::table::Field {
                    name: stringify!($name),
                    path: concat!($at, stringify!($name)),
                    twin: $crate::job::table::twin!($name $also),
                    spec: $spec,
                    required: !<$ty as $crate::job::table::Value>::OPTIONAL,
                    #[cfg(feature = "describe")]
                    about: concat!($($doc, "\n"),*),
                }),+],
                carried: &[$($carried)?],
                open: $crate::job::table::is_open!($($open)?),
                #[cfg(feature = "describe")]
                about: concat!($($about, "\n"),*),
            };

            $($crate::job::table::getter! { [$(#[doc = $doc])*] $name = $spec $(=> $getter)? })+
        }

        impl $crate::job::table::Fields for $block {
            fn held(&self) -> alloc::vec::Vec<$crate::job::table::Held<'_>> {
                alloc::vec![$($crate::job::table::Value::held(&self.$name)),+]
            }
        }

        impl $crate::job::table::Value for $block {
            const OPTIONAL: bool = $crate::job::table::has_default!($($default)?);

            fn build(document: &$crate::Document) -> Option<Self> {
                let $crate::Document::Object(entries) = document else {
                    return $crate::job::table::default_or!($($default)?);
                };
                Some($block {
                    $($name: $crate::job::table::Value::build($crate::job::table::entry(entries, stringify!($name)))?,)+
                })
            }

            fn held(&self) -> $crate::job::table::Held<'_> {
                $crate::job::table::Held::Block(self)
            }

            fn number_mut(&mut self, _: &str, path: &str) -> Option<&mut f64> {
                let mut fields = Self::BLOCK.fields.iter();
                $(if let Some(field) = fields.next()
                    && let Some(found) = $crate::job::table::Value::number_mut(&mut self.$name, field.path, path)
                {
                    return Some(found);
                })+
                None
            }
        }
    };
}

/// The method of a row that names one: the value, or what is assumed for it.
macro_rules! getter {
    ([$($doc:tt)*] $name:ident = $spec:expr) => {};
    ([$($doc:tt)*] $name:ident = $spec:expr => $getter:ident) => {
        $($doc)*
        pub fn $getter(&self) -> f64 {
            self.$name.unwrap_or(const { $spec.default() })
        }
    };
}

macro_rules! twin {
    ($name:ident []) => {
        None
    };
    ($name:ident [$also:literal]) => {
        Some(concat!($also, stringify!($name)))
    };
}

macro_rules! is_open {
    () => {
        false
    };
    (open) => {
        true
    };
}

macro_rules! has_default {
    () => {
        false
    };
    (default) => {
        true
    };
}

macro_rules! default_or {
    () => {
        None
    };
    (default) => {
        Some(Default::default())
    };
}

/// Declares a block of one of several kinds: `choice! { /// What it is. pub enum Hinges by "kind" { /// What it is. Plain(PlainHinges) = "plain", … } }`.
macro_rules! choice {
    (
        $(#[doc = $about:literal])*
        $(#[derive($($derive:ident),+)])?
        pub enum $choice:ident by $tag:literal {
            $($(#[doc = $doc:literal])* $kind:ident($block:ident) = $name:literal,)+
        }
    ) => {
        $(#[doc = $about])*
        #[derive(Clone, Debug, PartialEq, serde::Serialize $($(, $derive)+)?)]
        #[serde(tag = $tag)]
        #[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
        pub enum $choice {
            $($(#[doc = $doc])* #[serde(rename = $name)] $kind($block),)+
        }

        impl $choice {
            pub(crate) const CHOICE: &'static $crate::job::table::Choice = &$crate::job::table::Choice {
                tag: $tag,
                kinds: &[$($crate::job::table::Chosen {
                    name: $name,
                    block: $block::BLOCK,
                    #[cfg(feature = "describe")]
                    about: concat!($($doc, "\n"),*),
                }),+],
                #[cfg(feature = "describe")]
                about: concat!($($about, "\n"),*),
            };
        }

        impl $crate::job::table::Value for $choice {
            fn build(document: &$crate::Document) -> Option<Self> {
                let $crate::Document::Object(entries) = document else { return None };
                let $crate::Document::Text(kind) = $crate::job::table::entry(entries, $tag) else { return None };
                match &**kind {
                    $($name => $crate::job::table::Value::build(document).map($choice::$kind),)+
                    _ => None,
                }
            }

            fn held(&self) -> $crate::job::table::Held<'_> {
                match self {
                    $($choice::$kind(block) => $crate::job::table::Held::Chosen($name, block),)+
                }
            }

            fn number_mut(&mut self, own: &str, path: &str) -> Option<&mut f64> {
                match self {
                    $($choice::$kind(block) => $crate::job::table::Value::number_mut(block, own, path),)+
                }
            }
        }
    };
}

pub(crate) use {block, choice, default_or, getter, has_default, is_open, twin};
