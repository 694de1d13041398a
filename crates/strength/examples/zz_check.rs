//! x
fn main() {
    let path = std::env::args().nth(1).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    let job = job::read(&text).unwrap_or_else(|f| panic!("{f}"));
    let solution = roof::solve(&job).unwrap();
    for _ in 0..3 { let t = std::time::Instant::now();
    let _ = strength::whole::check(&job, &solution); println!("{:?}", t.elapsed()); }
    match strength::whole::check(&job, &solution) {
        Err(e) => println!("FAULT {e}"),
        Ok(c) => {
            let s = &c.strength;
            println!("{:?}\n{:?}", s.assumed, s.totals);
            for f in &s.loads { println!("  {} = {:.4} {} [{}] {}", f.what, f.value, f.unit, f.how, f.from); }
            for r in &s.refused { println!("REFUSED {} [{}] {}", r.code, r.place, r.text); }
            let mut seen = std::collections::BTreeMap::new();
            for m in &s.members { let n = seen.entry(m.kind).or_insert(0); *n += 1; if *n <= 3 { println!("{} {:?} {}x{} used {:.2} {:?} pass {:?}", m.mark, m.kind, m.size.thickness_mm, m.size.depth_mm, m.left.used, m.left.verdict, m.would_pass.map(|p| (p.thickness_mm, p.depth_mm))); for c in &m.checks { println!("     {} {:.2} {} {} @{:.0}", c.name, c.used, c.clause, s.combinations[c.combination as usize].name, c.at_mm); } } }
            for j in &s.joints { println!("JOINT {} {:?} {:.0} N used {:?} {} | {} | {}", j.name, j.marks, j.force_n, j.used, j.takes, j.remark, j.clause); }
            for f in s.feet.iter().take(6) { println!("{f:?}"); }
            for w in &s.walls { println!("{w:?}"); }
            let m = &s.members[0];
            for l in c.working(&m.mark, None).unwrap() { println!("   {} = {} = {:.4} {} ({})", l.what, l.how, l.value, l.unit, l.from); }
        }
    }
}
