//! The tables of what the app can ask of the core. From each follow the
//! dispatch of a call by its name, and the TypeScript interface that types it.

/// Makes the dispatch of calls and, for the bindings, their TypeScript interface.
///
/// The first row names the interface and the desk that answers. Each other row reads
/// `name: What it takes => What it gives = function`, where the function takes the desk and what the call takes, and
/// gives a result or a [`Refusal`](crate::Refusal).
macro_rules! calls {
    (
        #[doc = $about:literal] $interface:ident $(extends $base:ident)? of $desk:ty;
        $($(#[doc = $doc:literal])* $name:ident: $takes:ty => $gives:ty = $function:path;)*
    ) => {
        /// Answers a call: its name, what it takes as JSON. Gives JSON; nothing when the table has no such call.
        ///
        /// # Errors
        /// A [`Refusal`](crate::Refusal) with what is wrong and what to do.
        fn answer(desk: &mut $desk, name: &str, takes: &str) -> Option<Result<String, crate::Refusal>> {
            let not_understood = |error: serde_json::Error| crate::Refusal::not_understood(name, &error);
            match name {
                $(stringify!($name) => {
                    let takes: Result<$takes, _> = serde_json::from_str(takes).map_err(not_understood);
                    let gives: Result<$gives, _> = takes.and_then(|takes| $function(desk, takes));
                    Some(gives.and_then(|gives| serde_json::to_string(&gives).map_err(not_understood)))
                })*
                _ => None,
            }
        }

        /// The calls as a TypeScript interface: for each its name, what it takes and gives.
        #[cfg(feature = "bindings")]
        pub(crate) fn interface(gather: &mut crate::bindings::Gather) -> String {
            let mut text = concat!(
                "/**", $about, " */\nexport interface ", stringify!($interface), $(" extends ", stringify!($base),)? " {\n"
            ).to_owned();
            $(
                let (takes, gives) = (gather.name_of::<$takes>(), gather.name_of::<$gives>());
                $(text.push_str(concat!("  /**", $doc, " */\n"));)*
                text.push_str(&format!("  {}: [{takes}, {gives}];\n", stringify!($name)));
            )*
            text.push_str("}\n");
            text
        }
    };
}
pub(crate) use calls;
