//! The two doors into the workshop, and what lies behind both.

use crate::assets::Assets;
use crate::pairing::{Pairing, Tokens};
use crate::said::{NetworkSaid, Said};
use crate::store::{Store, StoreError};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

/// What both doors lead to.
pub(crate) struct Inside {
    pub(crate) store: Store,
    pub(crate) assets: Assets,
    pub(crate) tokens: Tokens,
    pub(crate) network: Option<NetworkSaid>,
    pairing: Mutex<Pairing>,
    tell: Box<dyn Fn(&Said) + Send + Sync>,
}

impl Inside {
    pub(crate) fn new(
        store: Store,
        assets: Assets,
        network: Option<NetworkSaid>,
        tell: Box<dyn Fn(&Said) + Send + Sync>,
    ) -> Self {
        Self { store, assets, tokens: Tokens::default(), network, pairing: Mutex::default(), tell }
    }

    pub(crate) fn tell(&self, said: &Said) {
        (self.tell)(said);
    }

    pub(crate) fn pairing(&self) -> MutexGuard<'_, Pairing> {
        self.pairing.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Tells the code that holds.
    pub(crate) fn tell_code(&self) {
        let code = self.pairing().code(Instant::now());
        if let Some((code, _)) = code {
            self.tell(&Said::Code { code });
        }
    }

    /// Brings the tokens that let in up to date with the store.
    pub(crate) fn renew_tokens(&self) -> Result<(), StoreError> {
        self.tokens.set(self.store.read(|reader| reader.hashes())?);
        Ok(())
    }
}

/// A door: who may knock at it, and under which addresses.
#[derive(Clone)]
pub(crate) struct Door {
    pub(crate) inside: Arc<Inside>,
    /// Whether it leads to the network. The other one leads to this machine only.
    pub(crate) network: bool,
    /// Hosts with their port that requests may ask for, in small letters.
    pub(crate) hosts: Arc<[String]>,
}

impl Door {
    /// Whether a page of this origin is one of ours.
    pub(crate) fn is_ours(&self, origin: &str) -> bool {
        let scheme = if self.network { "https://" } else { "http://" };
        origin.strip_prefix(scheme).is_some_and(|host| self.is_host(host))
    }

    pub(crate) fn is_host(&self, host: &str) -> bool {
        self.hosts.iter().any(|known| known.eq_ignore_ascii_case(host))
    }
}
