//! What covers the slopes: tiles, slates or sheets, battens, underlay, edges, ventilation.
