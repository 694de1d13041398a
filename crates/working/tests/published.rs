//! Workings against figures of reference/geometry_checks.json.

use job::written::Lengths;
use roof::solution::{Member, MemberKind};
use serde_json::Value;
use working::{Basis, Figure, Question, answer};

fn entry(id: &str) -> Value {
    let all: Vec<Value> =
        serde_json::from_str(include_str!("../../../reference/geometry_checks.json")).expect("the checks");
    all.into_iter().find(|e| e["id"] == id).expect("an entry")
}

fn rectangle(pitch: &str, east: &str) -> job::Job {
    let text = format!(
        "format = 1\ntitle = \"Check\"\n[plan]\ncorners = [[0, 0], [10000, 0], [10000, 6000], [0, 6000]]\n\
         [roof]\npitch = {pitch}\n[roof.walls]\nB = {{ pitch = {east} }}\nD = {{ gable = true }}\n\
         [timber]\nrafter = {{ size = [47, 150] }}\nhip = {{ size = [50, 225], edge = \"backed\" }}\n\
         ridge = {{ size = [32, 225] }}\n"
    );
    job::read(&text).expect("a job")
}

struct Checked {
    job: job::Job,
    solution: roof::solution::Solution,
}

impl Checked {
    fn new(pitch: &str, east: &str) -> Self {
        let job = rectangle(pitch, east);
        let solution = roof::solve(&job).expect("a roof");
        Self { job, solution }
    }

    fn first(&self, kind: MemberKind, wall: Option<&str>) -> &Member {
        self.solution.members.iter().find(|m| m.kind == kind && m.wall.as_deref() == wall).expect("a timber")
    }

    /// What a working comes to, from the sizes of the plan alone.
    fn comes_to(&self, figure: Figure, m: &Member, number: usize) -> f64 {
        let question = Question::nth(figure, &m.mark, number);
        let found = answer(&self.job, &self.solution, &question, Lengths::Millimetres, 360.0).expect("an answer");
        assert_eq!(found.basis, Basis::Sizes, "{question}");
        found.comes_to
    }
}

#[test]
fn a_hip_between_unequal_pitches_reads_as_the_row_says() {
    // row-09-k90-a30-b45: derived from plane normals; exact where the row notes it.
    let row = entry("row-09-k90-a30-b45");
    let expected = |key: &str| row["expected"][key].as_f64().expect("a figure");
    let (deg, mm) = (0.001, 0.1);
    let roof = Checked::new("30", "45");
    let near = |found: f64, key: &str, within: f64| {
        assert!((found - expected(key)).abs() < within, "{key}: {found} is not {}", expected(key));
    };
    let hip = roof.first(MemberKind::HipRafter, None);
    near(roof.comes_to(Figure::TrueLength, hip, 0), "hip_true_mm", mm);
    near(roof.comes_to(Figure::Pitch, hip, 0), "hip_pitch_deg", deg);
    let mut backings = [0, 1].map(|side| roof.comes_to(Figure::Backing, hip, side));
    backings.sort_by(f64::total_cmp);
    near(backings[0], "backing_a_deg", deg);
    near(backings[1], "backing_b_deg", deg);
    near(roof.comes_to(Figure::TrueLength, roof.first(MemberKind::CommonRafter, Some("A")), 0), "common_a_mm", mm);
    for (wall, side) in [("A", "a"), ("B", "b")] {
        let jack = roof.first(MemberKind::JackRafter, Some(wall));
        let cheek = jack.cuts.iter().position(|c| c.name.starts_with("head cheek")).expect("a cheek");
        near(90.0 - roof.comes_to(Figure::Edge, jack, cheek), &format!("jack_edge_{side}_deg"), deg);
        near(roof.comes_to(Figure::Tilt, jack, cheek), &format!("jack_tilt_{side}_deg"), deg);
        near(roof.comes_to(Figure::Less, jack, 0), &format!("jack_short_{side}_mm"), mm);
    }
}

#[test]
fn backing_at_six_in_twelve_is_the_rise_on_the_length_of_the_hip() {
    // backing-6: Hodgson fig. 41 and Griffith sec. 26, published: 6 on 18.
    let published = entry("backing-6")["expected"].as_f64().expect("a figure");
    let roof = Checked::new("\"6:12\"", "\"6:12\"");
    let hip = roof.first(MemberKind::HipRafter, None);
    assert!((roof.comes_to(Figure::Backing, hip, 0) - published).abs() < 0.001);
    // NAVEDTRA 14044 (published): 18 of hip to each 12 of common run.
    assert!((roof.comes_to(Figure::TrueLength, hip, 0) - 3000.0 * 18.0 / 12.0).abs() < 0.05);
}
