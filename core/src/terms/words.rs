//! Words of the documents. A set of words is declared once: what each is called here, what a document writes, what it means.

/// One word as documents write it.
#[derive(Debug)]
pub struct Word {
    /// What a document writes.
    pub name: &'static str,
    /// What it means, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// A set of words, one of which may stand in a field.
#[derive(Debug)]
pub struct Words {
    /// The words; the first serves as an example.
    pub list: &'static [Word],
    /// What they are about, for the published schema.
    #[cfg(feature = "describe")]
    pub about: &'static str,
}

/// A type whose values are the words of a set.
pub trait Worded: Copy + Sized + 'static {
    /// The set.
    const WORDS: &'static Words;
    /// All values, in the order of the set.
    const VALUES: &'static [Self];

    /// The value of what a document writes.
    fn of(name: &str) -> Option<Self> {
        let index = Self::WORDS.list.iter().position(|word| word.name == name)?;
        Self::VALUES.get(index).copied()
    }

    /// What a document writes.
    fn name(self) -> &'static str;
}

impl Words {
    /// What documents write, in order.
    pub fn names(&self) -> alloc::vec::Vec<&'static str> {
        self.list.iter().map(|word| word.name).collect()
    }
}

/// Declares a set of words: `words! { /// About them. pub enum Hand { /// What it means. Right = "right", … } }`.
macro_rules! words {
    (
        $(#[doc = $about:literal])*
        pub enum $words:ident {
            $($(#[doc = $doc:literal])* $word:ident = $name:literal,)+
        }
    ) => {
        $(#[doc = $about])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize)]
        #[cfg_attr(feature = "describe", derive(schemars::JsonSchema, ts_rs::TS))]
        pub enum $words {
            $($(#[doc = $doc])* #[serde(rename = $name)] $word,)+
        }

        impl $crate::terms::words::Worded for $words {
            const WORDS: &'static $crate::terms::words::Words = &$crate::terms::words::Words {
                list: &[$($crate::terms::words::Word {
                    name: $name,
                    #[cfg(feature = "describe")]
                    about: concat!($($doc, "\n"),*),
                }),+],
                #[cfg(feature = "describe")]
                about: concat!($($about, "\n"),*),
            };
            const VALUES: &'static [$words] = &[$($words::$word),+];

            fn name(self) -> &'static str {
                match self {
                    $($words::$word => $name,)+
                }
            }
        }
    };
}
pub(crate) use words;
