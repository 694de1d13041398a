//! Surveys: exact readings give the exact plan, noise is shared as a general
//! least-squares solver shares it, slips are found, and what is missing is
//! asked for.

mod plans;

use geometry::DVec2;
use geometry::survey::{Diagonal, Measure, Survey, SurveyFault, Turn, adjust};
use plans::{Rng, inside_deg, polygon, reading, star};
use rmpfit::{MPFitter, MPResult};

/// A survey of a plan: all sides, and these diagonals.
fn survey_of(plan: &[DVec2], diagonals: &[(usize, usize)]) -> Survey {
    let n = plan.len();
    Survey {
        sides: (0..n).map(|k| plan[k].distance(plan[(k + 1) % n])).collect(),
        diagonals: diagonals
            .iter()
            .map(|&(from, to)| Diagonal { from, to, length: plan[from].distance(plan[to]) })
            .collect(),
        turns: vec![],
        tolerance: 5.0,
        turn_tolerance_deg: 0.5,
        inward: None,
    }
}

/// All diagonals of a plan.
fn all_diagonals(n: usize) -> Vec<(usize, usize)> {
    (0..n).flat_map(|i| (i + 2..n).map(move |j| (i, j))).filter(|(i, j)| !(*i == 0 && *j == n - 1)).collect()
}

/// Moved so that the first corner is the origin and the second on +x.
fn aligned(plan: &[DVec2]) -> Vec<DVec2> {
    let along = (plan[1] - plan[0]).normalize();
    plan.iter().map(|p| DVec2::new(along.dot(*p - plan[0]), along.perp_dot(*p - plan[0]))).collect()
}

fn furthest(a: &[DVec2], b: &[DVec2]) -> f64 {
    a.iter().zip(b).map(|(p, q)| p.distance(*q)).fold(0.0, f64::max)
}

fn l_shape() -> Vec<DVec2> {
    [[0.0, 0.0], [9000.0, 0.0], [9000.0, 4000.0], [5000.0, 4000.0], [5000.0, 8000.0], [0.0, 8000.0]]
        .map(DVec2::from_array)
        .to_vec()
}

#[test]
fn exact_readings_give_the_exact_plan() {
    let mut rng = Rng::new(11);
    for round in 0..300 {
        let n = 3 + round % 10;
        let plan = if round % 2 == 0 { polygon(&mut rng, n) } else { star(&mut rng, n) };
        let mut survey = survey_of(&plan, &all_diagonals(n));
        let out = adjust(&survey).unwrap_or_else(|e| panic!("{round}: {e} {plan:?}"));
        assert!(furthest(&out.corners, &aligned(&plan)) < 0.01, "{round} {plan:?}");
        assert!(out.closing_error < 1e-3 && out.worst.as_ref().is_none_or(|w| !w.slip));
        assert_eq!(out.freedom, n * (n - 1) / 2 - (2 * n - 3));
        // All turns but no diagonals fix it too.
        survey.diagonals.clear();
        survey.turns = (0..n).map(|corner| Turn { corner, inside_deg: inside_deg(&plan, corner) }).collect();
        survey.turn_tolerance_deg = 0.01;
        let out = adjust(&survey).unwrap_or_else(|e| panic!("{round}: {e} {plan:?}"));
        assert!(furthest(&out.corners, &aligned(&plan)) < 0.01, "{round} {plan:?}");
        assert_eq!(out.freedom, 3);
    }
}

/// The same readings for the outside solver: unknowns are the corners after
/// the first, the second on +x.
struct Outside<'a> {
    survey: &'a Survey,
    readings: Vec<(Measure, f64, f64)>,
}

fn corners_of(unknowns: &[f64]) -> Vec<DVec2> {
    let mut plan = vec![DVec2::ZERO, DVec2::new(unknowns[0], 0.0)];
    plan.extend(unknowns[1..].chunks(2).map(|p| DVec2::new(p[0], p[1])));
    plan
}

impl MPFitter for Outside<'_> {
    fn eval(&mut self, params: &[f64], deviates: &mut [f64]) -> MPResult<()> {
        let plan = corners_of(params);
        for (d, (what, value, deviation)) in deviates.iter_mut().zip(&self.readings) {
            *d = (reading(&plan, *what) - value) / deviation;
        }
        Ok(())
    }

    fn number_of_points(&self) -> usize {
        self.readings.len()
    }
}

impl<'a> Outside<'a> {
    fn of(survey: &'a Survey) -> Self {
        let tape = survey.tolerance / 2.0;
        let sides = survey.sides.iter().enumerate().map(|(k, s)| (Measure::Side(k), *s, tape));
        let diagonals = survey.diagonals.iter().map(|d| (Measure::Diagonal(d.from, d.to), d.length, tape));
        let turns =
            survey.turns.iter().map(|t| (Measure::Turn(t.corner), t.inside_deg, survey.turn_tolerance_deg / 2.0));
        Self { survey, readings: sides.chain(diagonals).chain(turns).collect() }
    }

    /// Sum of weighted squares at a plan.
    fn sum(&self, plan: &[DVec2]) -> f64 {
        self.readings.iter().map(|(what, value, s)| ((reading(plan, *what) - value) / s).powi(2)).sum()
    }
}

#[test]
fn noise_is_shared_as_an_outside_solver_shares_it() {
    let mut rng = Rng::new(5);
    let mut solved = 0;
    let mut worst = 0.0_f64;
    for round in 0..1000 {
        let n = 4 + round % 7;
        let plan = if round % 3 == 0 { star(&mut rng, n) } else { polygon(&mut rng, n) };
        let mut survey = survey_of(&plan, &all_diagonals(n));
        // Some diagonals are left out; the sides and the rest still overdetermine the plan.
        survey.diagonals.retain(|d| (d.from == 0 && d.to > 1) || rng.unit() < 0.6);
        survey.turns = (0..n)
            .filter_map(|corner| {
                let (chosen, noise) = (rng.unit() < 0.3, 0.25 * rng.normal());
                chosen.then(|| Turn { corner, inside_deg: inside_deg(&plan, corner) + noise })
            })
            .collect();
        survey.sides.iter_mut().for_each(|s| *s += 2.5 * rng.normal());
        survey.diagonals.iter_mut().for_each(|d| d.length += 2.5 * rng.normal());
        // Where the readings leave two plans, the fold of each corner is told.
        survey.inward = Some((0..n).filter(|k| inside_deg(&plan, *k) > 180.0).collect());
        let out = match adjust(&survey) {
            Ok(out) => out,
            // A weak plan may be refused, but only for that.
            Err(SurveyFault::TooWeak { .. } | SurveyFault::Ambiguous { .. }) => continue,
            Err(SurveyFault::InwardDisagrees) if (0..n).any(|k| (inside_deg(&plan, k) - 180.0).abs() < 15.0) => {
                continue;
            }
            Err(e) => panic!("{round}: {e} {plan:?}"),
        };
        let mut outside = Outside::of(&survey);
        let start = aligned(&plan);
        let mut unknowns: Vec<f64> = vec![start[1].x];
        unknowns.extend(start[2..].iter().flat_map(|p| [p.x, p.y]));
        outside.mpfit(&mut unknowns).expect("the outside solver ends");
        let theirs = corners_of(&unknowns);
        let (our_sum, their_sum) = (outside.sum(&out.corners), outside.sum(&theirs));
        // Places are given to 0.001 mm, which costs next to nothing in the sum.
        assert!(our_sum <= their_sum * (1.0 + 1e-5) + 1e-5, "{round}: {our_sum} against {their_sum}");
        if their_sum <= our_sum * (1.0 + 1e-5) + 1e-5 {
            worst = worst.max(furthest(&out.corners, &theirs));
        }
        assert_eq!(outside.survey.sides.len(), out.corners.len());
        solved += 1;
    }
    println!("{solved} of 1000 solved, corners within {worst:.4} mm of the outside solver's");
    assert!(solved >= 900, "{solved}");
    assert!(worst < 0.5, "{worst}");
}

#[test]
fn a_slip_is_named() {
    let mut rng = Rng::new(77);
    let (mut named, mut among, mut rounds) = (0, 0, 0);
    for _ in 0..300 {
        let n = 5 + rng.below(5);
        let plan = polygon(&mut rng, n);
        let mut survey = survey_of(&plan, &all_diagonals(n));
        survey.sides.iter_mut().for_each(|s| *s += 2.5 * rng.normal());
        survey.diagonals.iter_mut().for_each(|d| d.length += 2.5 * rng.normal());
        let slip = if rng.unit() < 0.5 { 100.0 } else { -100.0 };
        let at = rng.below(survey.diagonals.len());
        survey.diagonals[at].length += slip;
        let Ok(out) = adjust(&survey) else { continue };
        let number = n + at;
        if out.readings[number].redundancy < 0.3 {
            continue;
        }
        rounds += 1;
        let worst = out.worst.expect("there are free readings");
        assert!(worst.slip, "{survey:?}");
        named += usize::from(worst.reading == number && worst.rivals.is_empty());
        among += usize::from(worst.reading == number || worst.rivals.contains(&number));
        if worst.reading == number {
            assert!((worst.off - slip).abs() < 30.0, "{} for {slip}", worst.off);
            assert!((out.closing_error - worst.off.abs()).abs() < 1e-9);
        }
    }
    println!("of {rounds} slips {named} named alone, {among} among those named");
    assert!(rounds > 200 && among == rounds && named * 100 >= rounds * 95, "{rounds} {named} {among}");
}

#[test]
fn without_a_slip_none_is_named_more_than_chance_has_it() {
    let mut rng = Rng::new(3);
    let (mut readings, mut slips) = (0, 0);
    for _ in 0..300 {
        let n = 5 + rng.below(4);
        let plan = polygon(&mut rng, n);
        let mut survey = survey_of(&plan, &all_diagonals(n));
        survey.sides.iter_mut().for_each(|s| *s += 2.5 * rng.normal());
        survey.diagonals.iter_mut().for_each(|d| d.length += 2.5 * rng.normal());
        let Ok(out) = adjust(&survey) else { continue };
        readings += out.readings.len();
        slips +=
            out.readings.iter().filter(|r| r.standardised.is_some_and(|w| w.abs() > geometry::survey::SLIP)).count();
    }
    // One in a thousand past 3.29 (normal distribution); three times that is far out of chance here.
    println!("{slips} of {readings} right readings past the limit");
    assert!(readings > 4000 && slips * 1000 <= 3 * readings, "{slips} of {readings}");
}

#[test]
fn what_is_missing_is_asked_for_and_suffices() {
    let mut rng = Rng::new(2);
    let mut refused = 0;
    for round in 0..200 {
        let n = 4 + round % 6;
        let plan = polygon(&mut rng, n);
        let mut survey = survey_of(&plan, &all_diagonals(n));
        survey.diagonals.retain(|_| rng.unit() < 0.15);
        survey.turns = (0..n)
            .filter(|_| rng.unit() < 0.15)
            .map(|corner| Turn { corner, inside_deg: inside_deg(&plan, corner) })
            .collect();
        survey.turn_tolerance_deg = 0.05;
        let mut asked = 0;
        loop {
            let next = match adjust(&survey) {
                Ok(out) => {
                    assert!(furthest(&out.corners, &aligned(&plan)) < 0.05, "{round}: {plan:?} {survey:?} {out:?}");
                    break;
                }
                Err(SurveyFault::UnderMeasured { next }) => {
                    assert!(asked == 0, "what was asked for did not suffice");
                    next
                }
                // What fixes a plan may still leave it weak; each further reading asked for helps.
                Err(SurveyFault::TooWeak { from, to, .. }) => vec![(from, to)],
                Err(e) => panic!("{round}: {e} {plan:?}"),
            };
            asked += 1;
            assert!(asked < 2 * n, "{round}: asks without end");
            survey.diagonals.extend(next.iter().map(|&(from, to)| Diagonal {
                from,
                to,
                length: plan[from].distance(plan[to]),
            }));
        }
        refused += usize::from(asked > 0);
    }
    assert!(refused > 100, "{refused}");
}

#[test]
fn a_diagonal_alone_leaves_corners_open() {
    // An L whose three diagonals all start at its inner corner: three flat plans fold along each of them.
    let mut survey = survey_of(&l_shape(), &[(3, 0), (3, 1), (3, 5)]);
    let fault = adjust(&survey).expect_err("open");
    let SurveyFault::Ambiguous { inward, next, lengths } = fault else { panic!("{fault}") };
    assert!(inward.iter().any(|corners| corners == &[3]), "{inward:?}");
    assert!((lengths[0] - lengths[1]).abs() > 1000.0);
    // The hint closes it, and so does what was asked for, or the turn.
    survey.inward = Some(vec![3]);
    let hinted = adjust(&survey).expect("told which corner points inwards");
    assert!(furthest(&hinted.corners, &l_shape()) < 0.01);
    survey.inward = Some(vec![1]);
    assert_eq!(adjust(&survey), Err(SurveyFault::InwardDisagrees));
    survey.inward = None;
    survey.diagonals.push(Diagonal { from: next.0, to: next.1, length: l_shape()[next.0].distance(l_shape()[next.1]) });
    survey.turns.push(Turn { corner: 3, inside_deg: 270.0 });
    assert!(furthest(&adjust(&survey).expect("closed").corners, &l_shape()) < 0.01);
}

#[test]
fn a_kite_is_taken_to_point_outwards_and_says_so() {
    let kite = [[0.0, 0.0], [4000.0, -2500.0], [7000.0, 0.0], [4000.0, 2500.0]].map(DVec2::from_array);
    let mut survey = survey_of(&kite, &[(1, 3)]);
    let out = adjust(&survey).expect("a convex plan is there");
    assert!(furthest(&out.corners, &aligned(&kite)) < 0.01);
    assert!(!out.taken_outward.is_empty() && out.freedom == 0 && out.worst.is_none() && out.closing_error == 0.0);
    survey.inward = Some(vec![]);
    assert_eq!(adjust(&survey).expect("told").taken_outward, Vec::<usize>::new());
}

#[test]
fn what_cannot_close_is_refused_where_it_is() {
    let hall = [[0.0, 0.0], [8000.0, 0.0], [8000.0, 5000.0], [0.0, 5000.0]].map(DVec2::from_array);
    let good = survey_of(&hall, &[(0, 2)]);
    let with = |change: &dyn Fn(&mut Survey)| {
        let mut survey = good.clone();
        change(&mut survey);
        adjust(&survey).expect_err("refused")
    };
    assert!(matches!(with(&|s| s.sides[2] = 80_000.0), SurveyFault::SideTooLong { side: 2, .. }));
    assert!(matches!(with(&|s| s.diagonals[0].length = 13_500.0), SurveyFault::DiagonalTooLong { from: 0, to: 2, .. }));
    let fault = with(&|s| s.diagonals[0].length = 2500.0);
    let SurveyFault::NoTriangle { mut corners, .. } = fault else { panic!("{fault}") };
    corners.sort_unstable();
    assert!(corners.starts_with(&[0]) && corners.contains(&2), "{corners:?}");
    assert!(matches!(with(&|s| s.diagonals.clear()), SurveyFault::UnderMeasured { next } if next.len() == 1));
    assert!(matches!(with(&|s| s.sides.truncate(2)), SurveyFault::Sides { sides: 2, .. }));
    assert!(matches!(with(&|s| s.sides[1] = f64::NAN), SurveyFault::NotAReading(Measure::Side(1))));
    assert!(matches!(with(&|s| s.diagonals[0].to = 9), SurveyFault::NotAReading(Measure::Diagonal(0, 9))));
    assert!(matches!(with(&|s| s.tolerance = 0.0), SurveyFault::Tolerance));
    let turns = |deg: f64| (0..4).map(|corner| Turn { corner, inside_deg: deg }).collect::<Vec<_>>();
    assert_eq!(with(&|s| (s.turns, s.diagonals) = (turns(270.0), vec![])), SurveyFault::WrongWayRound);
}

#[test]
fn walls_that_cross_are_refused() {
    // The turns fold the third side back over the first.
    let survey = Survey {
        sides: vec![6000.0, 3000.0, 6000.0, 3000.0, 3000.0],
        diagonals: vec![],
        turns: [(1, 40.0), (2, 40.0), (3, 90.0)].map(|(corner, inside_deg)| Turn { corner, inside_deg }).to_vec(),
        tolerance: 5.0,
        turn_tolerance_deg: 0.5,
        inward: None,
    };
    assert!(matches!(adjust(&survey), Err(SurveyFault::Crossing { .. })), "{:?}", adjust(&survey));
}

#[test]
fn a_corner_in_a_straight_wall_is_too_weak_without_a_far_diagonal() {
    // The middle corner of the long side is held by its own side only: 5 mm of tape move it by inches.
    let plan = [[0.0, 0.0], [4000.0, 0.0], [8000.0, 0.0], [8000.0, 5000.0], [0.0, 5000.0]].map(DVec2::from_array);
    let mut survey = survey_of(&plan, &[(0, 2), (2, 4)]);
    let fault = adjust(&survey).expect_err("weak");
    let SurveyFault::TooWeak { from, to, .. } = fault else { panic!("{fault}") };
    assert!(from == 1 || to == 1, "{from} {to}");
    survey.diagonals.push(Diagonal { from, to, length: plan[from].distance(plan[to]) });
    assert!(furthest(&adjust(&survey).expect("held").corners, &plan) < 0.01);
}

#[test]
fn hostile_numbers_are_answered() {
    let mut rng = Rng::new(99);
    for _ in 0..3000 {
        let n = rng.below(9);
        let number = |rng: &mut Rng| match rng.below(6) {
            0 => [0.0, -1.0, f64::NAN, f64::INFINITY, 1e300, 1e-300][rng.below(6)],
            1 => 1000.0,
            _ => 10_f64.powi(i32::try_from(rng.below(8)).unwrap()) * rng.unit(),
        };
        let survey = Survey {
            sides: (0..n).map(|_| number(&mut rng)).collect(),
            diagonals: (0..rng.below(12))
                .map(|_| Diagonal { from: rng.below(n + 1), to: rng.below(n + 1), length: number(&mut rng) })
                .collect(),
            turns: (0..rng.below(4))
                .map(|_| Turn { corner: rng.below(n + 1), inside_deg: 400.0 * rng.unit() })
                .collect(),
            tolerance: 5.0,
            turn_tolerance_deg: 0.5,
            inward: None,
        };
        if let Ok(out) = adjust(&survey) {
            assert!(out.corners.iter().all(|p| p.is_finite()), "{survey:?}");
        }
    }
}

#[test]
fn many_open_corners_are_asked_for() {
    let plan = polygon(&mut Rng::new(4), 20);
    // A strip of triangles, nothing to spare, where each could fold over.
    let strip: Vec<(usize, usize)> = (1..10).flat_map(|k| [(k, 20 - k), (k + 1, 20 - k)]).take(17).collect();
    let mut survey = survey_of(&plan, &strip);
    assert_eq!(survey.diagonals.len(), 17);
    let fault = adjust(&survey).expect_err("open");
    assert!(matches!(fault, SurveyFault::TooManyPlacings | SurveyFault::Ambiguous { .. }), "{fault}");
    survey.inward = Some(vec![]);
    let out = adjust(&survey).unwrap_or_else(|fault| panic!("{fault}"));
    assert!(furthest(&out.corners, &aligned(&plan)) < 0.01 && out.taken_outward.is_empty());
}

#[test]
fn large_surveys_are_answered_soon() {
    let mut rng = Rng::new(8);
    let n = geometry::survey::MOST_CORNERS;
    let plan = star(&mut rng, n);
    // All from one corner, nothing to spare: every corner may fold.
    let fan: Vec<(usize, usize)> = (2..n - 1).map(|k| (0, k)).collect();
    let mut survey = survey_of(&plan, &fan);
    let started = std::time::Instant::now();
    let loose = adjust(&survey);
    survey.diagonals = survey_of(&plan, &all_diagonals(n)[..geometry::survey::MOST_READINGS - n]).diagonals;
    let firm = adjust(&survey);
    println!("{:?} {:?} {:?}", loose.as_ref().err(), firm.as_ref().err(), started.elapsed());
    assert!(started.elapsed().as_secs() < 20, "slow: {:?}", started.elapsed());
    assert!(loose.is_err());
}
