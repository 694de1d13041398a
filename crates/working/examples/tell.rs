fn main() {
    let a: Vec<String> = std::env::args().skip(1).collect();
    let job = job::read(&std::fs::read_to_string(format!("examples/{}.toml", a[0])).unwrap()).unwrap();
    let s = roof::solve(&job).unwrap();
    for q in &a[1..] {
        match q.parse().and_then(|q| working::answer(&job, &s, &q, job::written::Lengths::Millimetres, 360.0)) {
            Err(e) => println!("{e}"),
            Ok(x) => {
                println!("== {} = {}   [{:?} {} vs {}]\n   {}", x.working.title, x.working.value, x.basis, x.comes_to, x.figure, x.working.idea);
                for l in &x.working.lines { println!("   {:60} {:50} {:>14} {}", l.words, l.sum, l.result, l.why.as_deref().unwrap_or("")); }
                println!("   hand: {}\n   rule: {}\n", x.working.by_hand.as_deref().unwrap_or("-"), x.working.rule);
            }
        }
    }
}
