//! The tables in which blocks are declared.

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
        #[derive(Clone, Debug, PartialEq, serde::Serialize, bon::Builder $($(, $derive)+)?)]
        #[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
        #[non_exhaustive]
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
        #[non_exhaustive]
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
