use strength::carrying::{Carrying, build, flow, own, unit::Kind, places::Under};
fn main() {
    let path = std::env::args().nth(1).unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    let job = job::read(&text).unwrap_or_else(|f| panic!("{f}"));
    let solution = roof::solve(&job).unwrap();
    let t = std::time::Instant::now();
    let c = Carrying::of(&job, &solution);
    let t1 = t.elapsed();
    let units = build::units(&c, 11000.0);
    let t2 = t.elapsed();
    let areas = own::Areas {
        slopes: vec![vec![[0.0, 1e-3]; c.slopes.len()]; 10],
        ceiling: vec![0.25e-3; 10],
        timber: vec![4.2e-6; 10],
    };
    let o = own::own(&c, &units, &areas);
    let t3 = t.elapsed();
    let f = flow::flow(&c, &units.units, &o, 10);
    println!("carrying {t1:?} build {t2:?} own {t3:?} all {:?}", t.elapsed());
    for n in &units.not_held { println!("NOT HELD {} {:?} at {}", c.runs[n.run].mark, c.runs[n.run].kind, n.places); }
    let area: f64 = c.slopes.iter().map(|s| s.area()).sum::<f64>() / 1e6;
    let strips: f64 = c.strips.iter().flatten().filter_map(|s| s.between(f64::NEG_INFINITY, f64::INFINITY)).map(|a| a.0).sum::<f64>() / 1e6;
    println!("area {area} strips {strips}");
    match f {
        Err(e) => println!("FAULT {e}"),
        Ok(f) => {
            println!("rounds {} applied {} walls {:?} lost {:?}", f.rounds, f.applied[0], f.ground.walls.iter().map(|(k, v)| (k.clone(), v[0])).collect::<Vec<_>>(), f.ground.lost[0]);
            println!("bearings {:?}", f.ground.bearings.iter().map(|(k, v)| (k.clone(), v[0])).collect::<Vec<_>>());
            for (k, u) in units.units.iter().enumerate() {
                let name = |r: usize| c.runs[r].mark.clone();
                let head = match u.kind { Kind::Pair { left, right } => format!("pair {} {} tied {} needs {}", name(left), name(right), u.tied, u.needs_held), Kind::Sloping(r) => format!("sloping {}", name(r)), Kind::Level(r) => format!("level {}", name(r)), Kind::Post(r) => format!("post {}", name(r)) };
                let rests: Vec<String> = u.under.iter().zip(&f.reactions[k]).map(|(w, r)| { let w = match w { Under::Run(r, s) => format!("{}@{s:.0}", name(*r)), Under::Ridge(r, s) => format!("ridge {}@{s:.0}", name(*r)), o => format!("{o:?}") }; format!("{w}={:.2}", r[0] / 1e3) }).collect();
                println!("{head}: {}", rests.join(" "));
            }
        }
    }
}
