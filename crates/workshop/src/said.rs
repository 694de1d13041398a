//! What the workshop tells whoever runs it. Never a token, and never what is in a job.

use std::fmt;

/// Something to tell on the terminal.
#[derive(Clone, Debug)]
#[non_exhaustive]
pub enum Said {
    /// The app can be opened on this machine.
    Open {
        /// Where.
        address: String,
    },
    /// The workshop can be reached from the network.
    Network(Box<NetworkSaid>),
    /// The code that pairs the next device.
    Code {
        /// Its digits.
        code: String,
    },
    /// A device was paired.
    Paired {
        /// What it calls itself.
        name: String,
    },
    /// Wrong codes were tried, so there is a new one.
    Tried,
}

/// How the workshop is reached from the network.
#[derive(Clone, Debug)]
pub struct NetworkSaid {
    /// Where the app is.
    pub addresses: Vec<String>,
    /// The page on which a phone starts, over plain HTTP.
    pub start: String,
    /// SHA-256 of the authority's certificate.
    pub fingerprint: String,
    /// The address of the page as a square for the phone's camera, in letters.
    pub square: Option<String>,
}

impl fmt::Display for Said {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Open { address } => write!(f, "Seatcut is open at {address}\nStop it with Ctrl-C."),
            Self::Network(network) => network.fmt(f),
            Self::Code { code } => {
                let (one, other) = code.split_at_checked(code.len() / 2).unwrap_or((code, ""));
                write!(f, "Code for the next device: {one} {other}  (once, within 10 minutes)")
            }
            Self::Paired { name } => write!(f, "Paired: {name}"),
            Self::Tried => write!(f, "Wrong codes were tried, so the code was changed."),
        }
    }
}

impl fmt::Display for NetworkSaid {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(square) = &self.square {
            writeln!(f, "{square}")?;
        }
        writeln!(f, "On a phone in this network start at {}", self.start)?;
        for address in &self.addresses {
            writeln!(f, "The app is at {address}")?;
        }
        write!(f, "Its certificate's SHA-256 is\n  {}", self.fingerprint)
    }
}
