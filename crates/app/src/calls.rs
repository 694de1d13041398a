//! The one table of what the app can ask of the core. From it follow the
//! dispatch of a call by its name, and the TypeScript interface that types it.

/// Makes the dispatch of calls and, for the bindings, their TypeScript interface.
///
/// Each row reads `name: What it takes => What it gives = function`, where the
/// function takes the desk and what the call takes, and gives a result or a [`Refusal`].
macro_rules! calls {
    ($($(#[doc = $doc:literal])* $name:ident: $takes:ty => $gives:ty = $function:path;)*) => {
        /// Answers a call: its name, what it takes as JSON. Gives JSON.
        ///
        /// # Errors
        /// A [`Refusal`] with what is wrong and what to do.
        pub(crate) fn answer(desk: &mut crate::Desk, name: &str, takes: &str) -> Result<String, crate::Refusal> {
            match name {
                $(stringify!($name) => {
                    let takes: $takes = serde_json::from_str(takes).map_err(|e| crate::Refusal::not_understood(name, &e))?;
                    let gives: $gives = $function(desk, takes)?;
                    serde_json::to_string(&gives).map_err(|e| crate::Refusal::not_understood(name, &e))
                })*
                _ => Err(crate::Refusal::no_such_call(name)),
            }
        }

        /// The calls as a TypeScript interface: for each its name, what it takes and gives.
        #[cfg(feature = "bindings")]
        pub(crate) fn interface(gather: &mut crate::bindings::Gather) -> String {
            let mut text = String::from("/** Every call that the core answers: what it takes and gives. */\nexport interface Calls {\n");
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
