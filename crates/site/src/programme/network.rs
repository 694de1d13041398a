//! Which step waits for which: early and late times, and the critical path.
//!
//! Times are counted in working days from the first morning, as numbers with fractions: a step from 0 to 1.5 takes the
//! first day and half the second. The method is that of J. E. Kelley and M. R. Walker, "Critical-path planning and
//! scheduling", 1959, with a pace that changes from day to day.

/// A step with less float than this is critical, working days: far below a minute, far above the rounding of sums.
pub const NO_FLOAT: f64 = 1e-6;

/// A step of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Step {
    /// Working days without any loss.
    pub net: f64,
    /// It stops in bad weather.
    pub exposed: bool,
    /// Numbers of the steps that must be done before; all lower than its own.
    pub after: Vec<usize>,
}

/// How much of each working day is left for exposed work, 0 to 1, from the first day.
#[derive(Clone, Debug, PartialEq)]
pub struct Pace {
    days: Vec<f64>,
}

/// The work does not end within the days that the pace knows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoEnd;

impl Pace {
    /// From the shares of the days.
    #[must_use]
    pub fn new(days: Vec<f64>) -> Self {
        Self { days }
    }

    /// When a step is done that starts at `start`.
    ///
    /// # Errors
    /// It is not done within the days there are.
    pub fn finish(&self, step: &Step, start: f64) -> Result<f64, NoEnd> {
        if !step.exposed || step.net <= 0.0 {
            let finish = start + step.net.max(0.0);
            return if finish <= self.days.len() as f64 { Ok(finish) } else { Err(NoEnd) };
        }
        let (mut at, mut left) = (start, step.net);
        // Not less than 0, and checked against the number of days by `get`.
        let mut day = start.max(0.0).floor() as usize;
        loop {
            let share = *self.days.get(day).ok_or(NoEnd)?;
            let end = (day + 1) as f64;
            let room = (end - at) * share;
            if left <= room && share > 0.0 {
                return Ok(at + left / share);
            }
            left -= room;
            at = end;
            day += 1;
        }
    }

    /// When a step must start to be done at `finish`; may lie before the first day.
    #[must_use]
    pub fn start(&self, step: &Step, finish: f64) -> f64 {
        if !step.exposed || step.net <= 0.0 {
            return finish - step.net.max(0.0);
        }
        let (mut at, mut left) = (finish, step.net);
        let mut day = finish.ceil().max(0.0) as usize;
        while let Some(earlier) = day.checked_sub(1) {
            let share = self.days.get(earlier).copied().unwrap_or(1.0);
            let begin = earlier as f64;
            let room = (at - begin) * share;
            if left <= room && share > 0.0 {
                return at - left / share;
            }
            left -= room;
            at = begin;
            day = earlier;
        }
        at - left
    }
}

/// When steps can and must take place.
#[derive(Clone, Debug, PartialEq)]
pub struct Times {
    /// Earliest starts.
    pub start: Vec<f64>,
    /// Earliest finishes.
    pub finish: Vec<f64>,
    /// How much later each may start and the whole not end later.
    pub float: Vec<f64>,
    /// When the last is done.
    pub end: f64,
}

/// Earliest starts and finishes, and the end.
///
/// # Errors
/// The work does not end within the days there are.
pub fn forward(steps: &[Step], pace: &Pace) -> Result<(Vec<f64>, Vec<f64>, f64), NoEnd> {
    let (mut start, mut finish) = (Vec::with_capacity(steps.len()), Vec::with_capacity(steps.len()));
    let mut end: f64 = 0.0;
    for step in steps {
        let done = step.after.iter().filter_map(|before| finish.get(*before).copied());
        let at: f64 = done.fold(0.0, f64::max);
        let until = pace.finish(step, at)?;
        end = end.max(until);
        start.push(at);
        finish.push(until);
    }
    Ok((start, finish, end))
}

/// Early times and floats of all steps.
///
/// # Errors
/// The work does not end within the days there are.
pub fn pass(steps: &[Step], pace: &Pace) -> Result<Times, NoEnd> {
    let (start, finish, end) = forward(steps, pace)?;
    let mut latest = vec![end; steps.len()];
    let mut float = vec![0.0; steps.len()];
    for (number, step) in steps.iter().enumerate().rev() {
        let until = latest.get(number).copied().unwrap_or(end);
        let from = pace.start(step, until);
        if let (Some(float), Some(early)) = (float.get_mut(number), start.get(number)) {
            *float = (from - early).max(0.0);
        }
        for before in &step.after {
            if let Some(latest) = latest.get_mut(*before) {
                *latest = latest.min(from);
            }
        }
    }
    Ok(Times { start, finish, float, end })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn step(net: f64, after: &[usize]) -> Step {
        Step { net, exposed: true, after: after.to_vec() }
    }

    #[test]
    fn the_longest_way_has_no_float() {
        // By hand: 0 (2) → 1 (3) → 3 (1), and 0 → 2 (1) → 3.
        let steps = [step(2.0, &[]), step(3.0, &[0]), step(1.0, &[0]), step(1.0, &[1, 2])];
        let times = pass(&steps, &Pace::new(vec![1.0; 20])).unwrap();
        assert_eq!(times.end, 6.0);
        assert_eq!(times.float, [0.0, 0.0, 2.0, 0.0]);
        assert_eq!(times.start, [0.0, 2.0, 2.0, 5.0]);
    }

    #[test]
    fn lost_days_are_waited_out_and_found_again_backwards() {
        let pace = Pace::new(vec![1.0, 0.0, 0.5, 1.0, 1.0]);
        let work = step(2.0, &[]);
        // A day, a lost one, half a day, and half of the next.
        assert_eq!(pace.finish(&work, 0.0), Ok(3.5));
        assert_eq!(pace.start(&work, 3.5), 0.0);
        let inside = Step { exposed: false, ..work.clone() };
        assert_eq!(pace.finish(&inside, 0.0), Ok(2.0));
        assert_eq!(pace.finish(&step(9.0, &[]), 0.0), Err(NoEnd));
        assert_eq!(pace.finish(&step(f64::INFINITY, &[]), 0.0), Err(NoEnd));
    }
}
