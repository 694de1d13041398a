use super::{file, roofed, warned};

#[test]
fn show() {
    let all = [
        file(
            "[[0,0],[9000,0],[9000,6000],[6300,6000],[6300,9000],[2700,9000],[2700,6001],[0,6001]]",
            40.0,
            "E = { gable = true }",
            "",
        ),
        file(
            "[[0,0],[3000,0],[3000,-1500],[5000,-1500],[5000,2],[9000,2],[9000,6000],[0,6000]]",
            40.0,
            "C = { gable = true }",
            "",
        ),
        file("[[3000,5000],[3000,7000],[0,7000],[0,0],[13000,0],[13000,4500]]", 40.0, "A = { plate = -200 }", ""),
        file(
            "[[0,0],[10750,0],[10750,8347],[-3,8350]]",
            30.0,
            "B = { gable = true }\nD = { gable = true }",
            "barge = { size = [25, 200] }",
        ),
        file("[[0,0],[10750,0],[10750,8347],[-3,8350]]", 30.0, "B = { gable = true }", "barge = { size = [25, 200] }"),
        file("[[0,0],[10750,0],[10750,8347],[-3,8350]]", 30.0, "A = { gable = true }", "barge = { size = [25, 200] }"),
        file(
            "[[0,0],[3000,0],[3000,-1500],[5000,-1500],[5000,0],[9000,0],[9000,6000],[0,6000]]",
            40.0,
            "C = { gable = true }",
            "rafter = { size = [50,200] }\nhip = { size = [100,200] }\nceiling_joist = { size = [50,200] }\nbinder = { size = [50,200] }\nhanger = { size = [40,100] }",
        ),
        file("[[0,0],[8000,0],[1,1],[0,5600]]", 40.0, "", ""),
    ];
    for t in all {
        println!("{}", t.lines().nth(3).unwrap());
        match std::panic::catch_unwind(|| roofed(&t)) {
            Ok(s) => {
                for n in &s.notices {
                    if n.level == super::NoticeLevel::Warn {
                        println!("   {} {} {}", n.code, n.place, n.text)
                    }
                }
            }
            Err(_) => println!("  FAIL"),
        }
        let _ = warned;
    }
}
