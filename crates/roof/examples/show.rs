//! Temp.
#[path = "../tests/common/mod.rs"]
mod common;
fn main() {
    let a = std::env::args().nth(1).unwrap();
    let job = if let Some(s) = a.strip_prefix("seed:") {
        let j = common::random_job(&mut common::Seed::new(s.parse().unwrap()));
        println!("{j:?}");
        j
    } else {
        let text = std::fs::read_to_string(a).unwrap();
        job::read(&text).unwrap_or_else(|e| panic!("{e}"))
    };
    let t = std::time::Instant::now();
    let s = match roof::solve(&job) {
        Ok(s) => s,
        Err(e) => {
            println!("ERROR {e}");
            return;
        }
    };
    println!("{:?}", t.elapsed());
    for m in &s.members {
        println!(
            "{:9} {:14} true {:8.1} cut {:8.1} stock {:8.1} as {} mirror {:?} ded {:?}",
            m.mark,
            m.kind.name(),
            m.true_length_mm,
            m.cut_length_mm,
            m.stock_length_mm,
            m.count_as,
            m.mirror_of,
            m.deductions.iter().map(|d| format!("{} {:.2}", d.why, d.mm)).collect::<Vec<_>>()
        );
        for c in &m.cuts {
            println!(
                "      {} {:?} face {:.3} edge {:.3} tilt {:.3} -> {:?}",
                c.name, c.at, c.face_angle_deg, c.edge_angle_deg, c.saw.tilt_deg, c.against
            );
        }
    }
    for n in &s.notices {
        println!("{:?} {} [{}] {}", n.level, n.code, n.place, n.text);
    }
    println!("{} members {} pieces", s.members.len(), s.pieces.len());
    for so in &s.setting_out {
        println!(
            "{} from {} len {:.1}: {}",
            so.name,
            so.from,
            so.length_mm,
            so.stations
                .iter()
                .map(|st| format!("{}@{:.1}{}", st.mark, st.near_mm, &st.side[..1]))
                .collect::<Vec<_>>()
                .join(" ")
        );
    }
}
