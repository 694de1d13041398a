//! Whatever the bytes, reading ends in a job or in faults with good places.

use proptest::prelude::*;

/// Reads, and checks the places of the faults.
fn read(bytes: &[u8]) -> Result<job::Job, Vec<&'static str>> {
    job::read(bytes).map_err(|faults| {
        assert!(!faults.as_slice().is_empty());
        let lines = bytes.split(|byte| *byte == b'\n').count();
        for fault in &faults {
            assert!(fault.span.start <= fault.span.end && fault.span.end <= bytes.len(), "{fault:?}");
            assert!((1..=lines).contains(&fault.line) && fault.column >= 1, "{fault:?}");
            for part in [&fault.what, &fault.why, &fault.remedy] {
                assert!(!part.is_empty() && !part.ends_with('.') && !part.contains('\n'), "{fault:?}");
            }
        }
        faults.iter().map(|fault| fault.code).collect()
    })
}

fn code(bytes: &[u8]) -> Vec<&'static str> {
    read(bytes).expect_err("a fault")
}

fn code_of(text: &str) -> Vec<&'static str> {
    code(text.as_bytes())
}

#[test]
fn files_that_are_no_text_are_told() {
    assert_eq!(code(b"format = 1\ntitle = \"\xff\""), ["not-text"]);
    assert_eq!(code(b"\xff\xfef\0o\0r\0"), ["not-text"], "UTF-16");
    assert_eq!(code(b"\x7fELF\x02\0\0\0"), ["not-text"]);
    let fault = job::read(b"format = 1\ntitle = \"\xff\"").expect_err("a fault");
    assert_eq!((fault.as_slice()[0].line, fault.as_slice()[0].column), (2, 10));
}

#[test]
fn empty_and_great_files_are_told() {
    for text in ["", " \n\t\r\n", "\u{feff}\n"] {
        assert_eq!(code(text.as_bytes()), ["file-empty"], "{text:?}");
    }
    assert_eq!(code(&vec![b'#'; job::LARGEST_FILE + 1]), ["file-too-large"]);
    assert_eq!(code(&vec![b'#'; job::LARGEST_FILE]).len(), 4, "a comment alone lacks four keys");
}

#[test]
fn a_byte_order_mark_and_windows_line_ends_do_not_matter() {
    let plain = job::defaults_toml();
    let windows = format!("\u{feff}{}", plain.replace('\n', "\r\n"));
    assert_eq!(read(windows.as_bytes()).unwrap(), read(plain.as_bytes()).unwrap());
    let fault = job::read("\u{feff}format = 1\r\ntitel = 1\r\n").expect_err("faults");
    assert!(fault.iter().any(|fault| (fault.line, fault.column, fault.code) == (2, 1, "unknown-key")), "{fault}");
}

/// How long a text of nonsense is, bytes: long enough for work that grows with
/// the square of it to show, short enough for a test.
const NONSENSE: usize = job::LARGEST_FILE / 8;

/// Time that one such text may take, s. It takes about a fifth of a second;
/// work that grows with the square of the length would take minutes.
const SLOWEST: f64 = 20.0;

/// Parts up to the length of a text of nonsense.
fn full(part: impl Fn(usize) -> String) -> String {
    let mut text = String::new();
    for n in 0.. {
        let part = part(n);
        if text.len() + part.len() > NONSENSE {
            break;
        }
        text.push_str(&part);
    }
    text
}

#[test]
fn full_files_of_nonsense_end() {
    // Whole parts are left out for the head and the tail.
    let after = |head: &str, part: &str| format!("{head}{}", &full(|_| part.into())[part.len() * 64..]);
    let files = [
        full(|_| "[".into()),
        after("a = ", "["),
        after("a = ", "{a="),
        full(|n| format!("k{n} = {n}\n")),
        full(|n| format!("[k{n}]\n")),
        full(|_| "a.".into()),
        full(|_| "= \n".into()),
        after("plan.corners = [", "[0,0],") + "]",
        after("plan.corners = [", "[0,x],") + "]",
        after("plan.corners = [", "[0,''],") + "]",
        after("title = \"", "½") + "\"",
        after("roof.pitch = \"", "1/") + "\"",
        after("roof.eaves.overhang = \"", "½") + "\"",
        full(|n| format!("roof.walls.w{n}.pitch = 0\n")),
        full(|n| format!("openings.w{n}.along = 0\n")),
        full(|n| format!("dormers.w{n}.wall = \"A\"\n")),
        full(|n| format!("bearings.\"{n} w\".top = \"½\"\n")),
        after("timber.purlin.up = [", "1000,") + "]",
        after("timber.purlin.up = [", "x,") + "]",
        after("timber.noggin.rows = ", "9"),
        after("bearings.", "a") + ".top = 1",
    ];
    for file in &files {
        let start = std::time::Instant::now();
        let codes = code(file.as_bytes());
        let seconds = start.elapsed().as_secs_f64();
        println!("{seconds:.2} s, {} faults, {}: {:.24}", codes.len(), codes[0], file.replace('\n', " "));
        assert!(seconds < SLOWEST, "took {seconds} s");
    }
}

/// A rectangle of plates with a roof.
const HEAD: &str =
    "format = 1\ntitle = \"x\"\nplan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]\nroof.pitch = 40\n";

#[test]
fn more_names_than_can_be_compared_are_refused() {
    let opening = |n: usize| {
        format!(
            "openings.n{n} = {{ kind = \"hatch\", wall = \"A\", along = 0, up_plan = 0, width = 99, height = 99 }}\n"
        )
    };
    let dormer = |n: usize| {
        format!(
            "dormers.n{n} = {{ kind = \"gable\", wall = \"A\", along = 0, back = 0, width = 99, plate = 99, pitch = 9 }}\n"
        )
    };
    let count = |text: &str, code: &str| {
        let codes = code_of(text);
        codes.iter().filter(|found| **found == code).count()
    };
    let openings: String = (0..=job::MOST_NAMED).map(opening).collect();
    let text = format!("{HEAD}{openings}");
    // All lie in one place: each but the first is told once.
    assert_eq!(count(&text, "openings-overlap"), job::MOST_NAMED - 1);
    assert_eq!(count(&text, "too-many-named"), 1);
    let dormers: String = (0..job::MOST_NAMED).map(dormer).collect();
    let text = format!("{HEAD}{dormers}");
    assert_eq!((count(&text, "dormers-overlap"), count(&text, "too-many-named")), (job::MOST_NAMED - 1, 0));
}

#[test]
fn names_and_letters_that_lead_elsewhere_are_refused() {
    for name in ["\"\"", "\"../a\"", "\"a.b\"", "\"a\\nb\"", "'½'"] {
        assert_eq!(
            code_of(&format!("{HEAD}bearings.{name} = {{ from = [0, 0], to = [1, 1] }}\n")),
            ["bad-name"],
            "{name}"
        );
    }
    for wall in ["", "AAAAAAAAAAAAAAAAAAAA", "a.b", "½", "A\\n"] {
        let dormer =
            format!("kind = \"gable\", wall = \"{wall}\", along = 0, back = 0, width = 99, plate = 99, pitch = 9");
        assert_eq!(code_of(&format!("{HEAD}dormers.a = {{ {dormer} }}\n")), ["unknown-wall"], "{wall}");
    }
    // Without corners no letter can be wrong.
    let text = "format = 1\ntitle = \"x\"\nplan.corners = 0\nroof.pitch = 40\n";
    let dormer =
        "dormers.a = { kind = \"gable\", wall = \"ZZ\", along = 0, back = 0, width = 99, plate = 99, pitch = 9 }\n";
    assert_eq!(code_of(&format!("{text}{dormer}")), ["wrong-type"]);
}

#[test]
fn extremes_of_every_new_number_are_told_or_read() {
    let keys = [
        "roof.walls.A.plate",
        "roof.walls.A.half_hip",
        "roof.walls.A.gablet",
        "roof.walls.A.upper.from",
        "roof.upper.pitch",
        "roof.eaves.sprocket.reach",
        "timber.purlin.up",
        "timber.collar.every",
        "timber.noggin.rows",
        "timber.joint.longest",
        "openings.a.along",
        "openings.a.flue_wall",
        "dormers.a.plate",
        "bearings.a.top",
    ];
    for key in keys {
        for value in ["nan", "inf", "-inf", "1e308", "-1e308", "9223372036854775807", "-9223372036854775808"] {
            assert!(!code_of(&format!("{HEAD}{key} = {value}\n")).is_empty(), "{key} = {value}");
        }
    }
}

proptest! {
    #[test]
    fn any_bytes(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let _ = read(&bytes);
    }

    #[test]
    fn any_text(text in "\\PC{0,200}") {
        let _ = read(text.as_bytes());
    }

    #[test]
    fn a_good_file_with_bytes_changed(changes in prop::collection::vec((any::<prop::sample::Index>(), any::<u8>()), 1..6)) {
        let mut bytes = job::defaults_toml().into_bytes();
        for (place, byte) in changes {
            let place = place.index(bytes.len());
            bytes[place] = byte;
        }
        let _ = read(&bytes);
    }

    #[test]
    fn a_good_file_with_lines_changed_about(which in 0..3_usize, a in 0..200_usize, b in 0..200_usize, cut in 0..60_usize) {
        let texts = [
            include_str!("cases/good-every-way-of-writing.toml"),
            include_str!("cases/good-every-part.toml"),
            include_str!("../../../examples/surveyed.toml"),
        ];
        let text = texts[which];
        let mut lines: Vec<&str> = text.lines().collect();
        let (a, b) = (a % lines.len(), b % lines.len());
        lines.swap(a, b);
        lines[a] = lines[a].get(cut..).unwrap_or(lines[a]);
        let _ = read(lines.join("\n").as_bytes());
    }

    #[test]
    fn any_value_for_any_key(key in "(format|title|region|units|plan\\.corners|plan\\.holes|plan\\.sides|plan\\.inward|plan\\.diagonals|plan\\.diagonals\\.A-C|plan\\.turns\\.B|roof\\.pitch|roof\\.eaves|roof\\.walls\\.[A-D]|roof\\.walls|timber\\.rafter\\.size|timber\\.hip|timber\\.purlin|timber\\.purlin\\.up|timber\\.noggin\\.rows|timber\\.joint\\.bolted|roof\\.upper|roof\\.walls\\.A\\.upper|roof\\.eaves\\.sprocket|openings|openings\\.a|openings\\.a\\.wall|dormers\\.b\\.along|bearings\\.c\\.from)",
        value in "(-?[0-9]{1,20}|-?[0-9]\\.[0-9]e[0-9]{1,3}|nan|inf|true|2031-05-14|\\[\\]|\\[\\[\\]\\]|\\[0,0\\]|\\[\\[\\[0,0\\]\\]\\]|\\{\\}|\"[0-9' ½ac-n]*\"|\\{ pitch = 30 \\}|\\[-1, nan\\])") {
        let text = format!("{key} = {value}\n");
        code(text.as_bytes());
    }
}
