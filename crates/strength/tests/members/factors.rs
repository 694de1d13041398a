//! The factors of the region as data.

use super::reading::uk;
use strength::annex::Standing;
use strength::annex::timber::{Duration, ServiceClass};

/// Values as in `reference/`: mostly from memory, so this only guards against a slip in the file.
#[test]
fn tables_as_noted() {
    let kmod = ServiceClass::ALL.map(|s| Duration::ALL.map(|d| uk().kmod(s, d).value));
    assert_eq!(kmod, [[0.6, 0.7, 0.8, 0.9, 1.1], [0.6, 0.7, 0.8, 0.9, 1.1], [0.5, 0.55, 0.65, 0.7, 0.9]]);
    assert_eq!(ServiceClass::ALL.map(|s| uk().kdef(s).value), [0.6, 0.8, 2.0]);
    let noted = [
        ("ksys.factor", 1.1),
        ("ksys.members-least", 4.0),
        ("ksys.spacing-most", 610.0),
        ("km", 0.7),
        ("kh.depth", 150.0),
        ("kh.exponent", 0.2),
        ("kh.most", 1.3),
        ("kh.density-most", 700.0),
        ("kc90.plain", 1.0),
        ("kc90.continuous", 1.25),
        ("kc90.discrete", 1.5),
        ("kc90.gap-least", 2.0),
        ("kc90.spread", 30.0),
        ("beta-c", 0.2),
        ("effective-length.moment", 1.0),
        ("effective-length.udl", 0.9),
        ("effective-length.mid-point", 0.8),
        ("effective-length.cantilever-udl", 0.5),
        ("effective-length.cantilever-end", 0.8),
        ("effective-length.compression-edge", 2.0),
        ("effective-length.tension-edge", -0.5),
        ("deflection.ceiling", 250.0),
        ("deflection.open", 150.0),
        ("deflection.cantilever-ceiling", 125.0),
        ("deflection.cantilever-open", 75.0),
        ("cutting.hole-apart", 3.0),
    ];
    for (name, value) in noted {
        let found = uk().figures().iter().find(|f| f.name == name).expect("the figure is there");
        assert_eq!(found.figure.value, value, "{name}");
    }
}

/// A figure from memory that a check leans on must be told apart: the notes mark these as seen.
#[test]
fn what_was_seen_is_marked() {
    let seen = |name: &str| {
        let found = uk().figures().iter().find(|f| f.name == name).expect("the figure is there");
        found.figure.standing == Standing::Published
    };
    for name in ["gamma-m", "kmod.two.short", "kmod.three.permanent", "kcr", "kn", "kc90.discrete", "beta-c"] {
        assert!(seen(name), "{name}");
    }
    for name in ["kmod.two.instant", "kmod.three.short", "kdef.two", "deflection.open", "kc90.continuous"] {
        assert!(!seen(name), "{name}");
    }
}
