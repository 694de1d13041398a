//! The pure crates behind a few exported names, with no bindings generator, so
//! that `scripts/same_bytes.mjs` can run them in WebAssembly and compare every
//! byte with what the binary writes natively.
//!
//! The host puts a job file in byte by byte ([`seatcut_put`]), asks for one
//! document ([`seatcut_make`]) and takes it out byte by byte
//! ([`seatcut_length`], [`seatcut_get`]). No address crosses the border, so
//! there is no unsafe block here; only the exported names themselves count as
//! unsafe code, because two libraries could export the same one. A call for
//! each byte is slow beside shared memory and quick enough for a check.

#![expect(unsafe_code, reason = "an exported name counts as unsafe code; there is no unsafe block")]

use document::Document;
use std::cell::RefCell;

/// What lies on the desk between host and core.
struct Desk {
    job: Vec<u8>,
    made: Vec<u8>,
}

thread_local! {
    static DESK: RefCell<Desk> = const { RefCell::new(Desk { job: Vec::new(), made: Vec::new() }) };
}

/// Puts one more byte of the job file on the desk (the low eight bits).
#[unsafe(no_mangle)]
pub extern "C" fn seatcut_put(byte: u32) {
    DESK.with_borrow_mut(|desk| desk.job.push(byte as u8));
}

/// Makes a document of the job on the desk: 0 the solution as JSON, 1 the
/// sheets as PDF, 2 the list of timbers, 3 the order as a spreadsheet. Returns 1 when it is made, 0 when not;
/// then the reason lies on the desk instead.
#[unsafe(no_mangle)]
pub extern "C" fn seatcut_make(document: u32) -> u32 {
    DESK.with_borrow_mut(|desk| {
        let made = make(&desk.job, document);
        let done = made.is_ok();
        desk.made = made.unwrap_or_else(String::into_bytes);
        u32::from(done)
    })
}

/// How many bytes were made.
#[unsafe(no_mangle)]
pub extern "C" fn seatcut_length() -> u32 {
    DESK.with_borrow(|desk| u32::try_from(desk.made.len()).unwrap_or(u32::MAX))
}

/// One byte of what was made; 0 past the end.
#[unsafe(no_mangle)]
pub extern "C" fn seatcut_get(at: u32) -> u32 {
    DESK.with_borrow(|desk| desk.made.get(at as usize).copied().map_or(0, u32::from))
}

fn make(job: &[u8], document: u32) -> Result<Vec<u8>, String> {
    let job = job::read(job).map_err(|faults| faults.to_string())?;
    let solution = roof::solve(&job).map_err(|error| error.to_string())?;
    let (all, _) = Document::of(&job, solution);
    let made = match document {
        0 => return all.json().map(String::into_bytes).map_err(|error| error.to_string()),
        1 => drawings::pack_with(&all.solution, &all.papers()),
        2 => drawings::members_csv(&all.solution).map(String::into_bytes),
        3 => match &all.order {
            Some(order) => drawings::order_xlsx(&all.solution, order),
            None => return Err("the job has no order".to_owned()),
        },
        _ => return Err(format!("there is no document {document}")),
    };
    made.map_err(|error| error.to_string())
}
