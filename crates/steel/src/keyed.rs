//! Words of the data files as types.

/// An enumeration whose variants each have one word, the same in data files, JSON and commands.
#[doc(hidden)]
#[macro_export]
macro_rules! keyed {
    ($(#[$doc:meta])* $name:ident { $($(#[$variant_doc:meta])* $variant:ident = $key:literal,)+ }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        pub enum $name {
            $($(#[$variant_doc])* $variant,)+
        }

        impl $name {
            /// All of them, in the order of their definition.
            pub const ALL: &'static [Self] = &[$(Self::$variant,)+];

            /// The word used in JSON and in data files.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self {
                    $(Self::$variant => $key,)+
                }
            }

            /// Finds one by its word, in any case.
            #[must_use]
            pub fn find(key: &str) -> Option<Self> {
                Self::ALL.iter().copied().find(|one| one.key().eq_ignore_ascii_case(key.trim()))
            }
        }
    };
}

pub(crate) use keyed;
