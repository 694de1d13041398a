//! t
fn main() {
    for f in std::env::args().skip(1) {
        let t = std::fs::read_to_string(&f).unwrap();
        let job = job::read(&t).unwrap();
        let s = roof::solve(&job).unwrap();
        let r = order::stock::Region::of("uk").unwrap();
        for g in order::stock::groups(&job, &s) {
            let t0 = std::time::Instant::now();
            let o = order::whole::timber(&job, &s, r, &g, 420.0);
            println!(
                "{f} {:?} {:?} pieces {} kinds {} buy {:?} bought {:.1} used {:.1} waste {:.1}% unshared {:?} best {:?} offcuts {:?} {:?} {:?}",
                g.section,
                g.class,
                g.count(),
                g.pieces.len(),
                o.buy.iter().map(|b| (b.length_mm, b.count)).collect::<Vec<_>>(),
                o.bought_m,
                o.used_m,
                o.waste_percent,
                o.unshared.map(|u| u.bought_m),
                o.best,
                o.offcuts.len(),
                o.refused,
                t0.elapsed()
            );
        }
    }
}
