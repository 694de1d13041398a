//! What a roof carries: own weight, people, snow and wind, and how they go together.
