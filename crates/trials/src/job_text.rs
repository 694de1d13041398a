//! Any bytes as a job file.

/// Reads bytes as a job file: either a job whose every figure is a number, or
/// faults that point into the text and say what to do.
///
/// # Panics
/// When that does not hold.
pub fn job_text(bytes: &[u8]) {
    match job::read(bytes) {
        Ok(job) => {
            let corners: usize = job.loops.iter().map(Vec::len).sum();
            assert_eq!(job.walls.len(), corners, "a wall for every corner");
            assert!(job.loops.iter().flatten().flatten().all(|mm| mm.is_finite()), "corners are places");
            assert!(job.walls.iter().all(|wall| wall.pitch_deg.is_finite()), "pitches are angles");
            assert!(job.timber.rafter.centres > 0.0, "rafters stand apart");
        }
        Err(faults) => {
            assert!(!faults.as_slice().is_empty(), "a refusal has a reason");
            for fault in &faults {
                assert!(fault.span.start <= fault.span.end && fault.span.end <= bytes.len(), "a fault is in the text");
                assert!(fault.line > 0 && fault.column > 0, "lines and columns count from one");
                let texts = [&fault.what, &fault.why, &fault.remedy];
                assert!(texts.iter().all(|text| !text.is_empty()), "a fault says what, why and what to do");
            }
        }
    }
}
