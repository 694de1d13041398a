//! Price lists: what is read, what is told, and what comes of it in a job.

use job::{Job, Per, StrengthClass};
use order::prices::{LARGEST_LIST, MOST_ROWS, PriceRow, PutFault, is_date, put_into, read_csv, write_csv};
use proptest::prelude::*;

const HEAD: &str = "what,thickness_mm,depth_mm,length_mm,class,price,per,dated\n";

/// A job with its own layout and remarks.
const JOB: &str = "# The boathouse, second price.
format = 1
title = \"Boathouse\" # as on the drawing
plan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]
roof.pitch = 40

# Rafters come from the yard at the bridge.
[stock.rafters]
size = [47, 150]
class = \"C24\"
lengths = [3600, 4200, 4800]
price = 3.2 # a metre
dated = \"2026-05-01\"

[stock.hips]
size = [47, 200]
lengths = [4800, 6000]
prices = [22, 29]
clean = true

[price.strap-down]
price = 2.5 # each, galvanised
per = \"each\"
dated = \"last spring\"
";

fn rows(text: &str) -> Vec<PriceRow> {
    read_csv(text.as_bytes()).unwrap_or_else(|faults| panic!("{faults}"))
}

/// Lines and codes of all faults.
fn faults(text: &[u8]) -> Vec<(u32, String)> {
    let faults = read_csv(text).err().unwrap_or_else(|| panic!("{}", String::from_utf8_lossy(text)));
    for fault in faults.iter() {
        assert!(!fault.what.is_empty() && !fault.why.is_empty() && !fault.remedy.is_empty());
        assert!(!fault.to_string().to_lowercase().contains("safe"));
    }
    faults.iter().map(|fault| (fault.line, fault.code.clone())).collect()
}

fn told(text: &str) -> String {
    read_csv(text.as_bytes()).unwrap_err().to_string()
}

fn read(text: &str) -> Job {
    job::read(text).unwrap_or_else(|faults| panic!("{faults}"))
}

#[test]
fn the_same_list_in_every_dress() {
    let plain = rows(&format!("{HEAD}timber,47,150,4800,C24,15.36,each,2026-11-02\nstrap-down,,,,,2.5,each,\n"));
    assert_eq!(plain.len(), 2);
    let timber = plain[0].timber.unwrap();
    assert_eq!((timber.thickness_mm, timber.depth_mm, timber.length_mm), (47.0, 150.0, Some(4800.0)));
    assert_eq!((timber.class, timber.clean), (Some(StrengthClass::C24), false));
    assert_eq!((plain[0].price, plain[0].per, plain[0].line), (15.36, Per::Each, 2));
    assert_eq!((plain[1].item.as_str(), plain[1].price, &plain[1].dated), ("strap-down", 2.5, &None));
    for same in [
        // Semicolons and decimal commas, a byte order mark, CRLF, columns in another order.
        "\u{feff}price;per;what;class;thickness_mm;depth_mm;length_mm;dated\r\n15,36;each;timber;C24;47;150;4800;2026-11-02\r\n2,5;each;strap-down;;;;;\r\n",
        // Tabs, quotes, and the larger side first.
        "what\tThickness mm\tdepth_mm\tlength_mm\tclass\tprice\tper\tdated\n\"timber\"\t150\t47\t4800\tc24\t15.36\tEach\t2026-11-02\nstrap-down\t\t\t\t\t2.50\teach\t\n",
        // A line twice.
        &format!(
            "{HEAD}timber,47,150,4800,C24,15.36,each,2026-11-02\nstrap-down,,,,,2.5,each,\nstrap-down,,,,,2.50,each,\n"
        ),
    ] {
        assert_eq!(rows(same), plain, "{same}");
    }
    // Blank lines count too, in every way that lines end, and so do lines within quotes.
    for end in ["\n", "\r\n", "\r"] {
        let text = ["", "what,price,per", "", "\"nut-m12", "\",1,each", "nut-m16,0,each"].join(end);
        assert_eq!(faults(text.as_bytes()), [(6, "price-not-positive".to_owned())], "{end:?}");
    }
    let text = serde_json::to_string(&plain).unwrap();
    assert_eq!(serde_json::from_str::<Vec<PriceRow>>(&text).unwrap(), plain);
}

#[test]
fn every_fault_at_once_with_its_line() {
    let text = format!(
        "{HEAD}timber,47,150,4.8,C24,15.36,each,2026-11-02\n\
         timber,47,,4800,C24,15.36,each,\n\
         strap-down,,,,,-2.5,each,\n\
         strap-gable,,,,,,each,\n\
         nut-m12,,,,,£0.20,each,\n\
         washer-m12,,,,,0.3,bag,02/11/2026\n\
         joist hanger,,,,,1.9,each,\n\
         timber,47,150,,C24,400,m3,\n\
         timber,47,150,3600,C25X,11,each,\n\
         timber,1.85,150,3600,C24,11,each,\n\
         timber,47,175,3600,C24,11,each,\n\
         timber,47,175,3600,C24,12,each,\n\
         timber,47,175,,C24,3,m,\n\
         bolt-m12x120,12,,,,0.9,each,\n\
         timber,47,150,,C24,15,each,\n\
         ,,,,,1,each,\n\
         rod-m12,,,,,0,m,\n\
         rod-m16,,,,,1,234,m,2026-11-02\n\
         rod-m20,,,,,1000000,m,\n"
    );
    let expected = [
        (2, "units-mixed"),
        (3, "timber-size"),
        (4, "price-not-positive"),
        (5, "price-missing"),
        (6, "bad-number"),
        (7, "bad-unit"),
        (7, "bad-date"),
        (8, "bad-item"),
        (9, "timber-unit"),
        (10, "bad-class"),
        (11, "units-mixed"),
        (13, "said-twice"),
        (14, "priced-two-ways"),
        (15, "sizes-of-no-timber"),
        (16, "timber-unit"),
        (17, "what-missing"),
        (18, "price-not-positive"),
        (19, "line-length"),
        (20, "out-of-range"),
    ];
    let found = faults(text.as_bytes());
    let found: Vec<(u32, &str)> = found.iter().map(|(line, code)| (*line, code.as_str())).collect();
    assert_eq!(found, expected);
    let words = told(&text);
    for remedy in [
        "line 2: 4.8 in the column length_mm is outside 100 to 20000 mm",
        "Is this metres? Then write 4800",
        // 0.047 × 0.150 m² × 400 = 2.82 a metre.
        "400 a m3 is 2.8200 a metre of it",
        "has another price on line 12",
        "see line 12",
        "as in 2026-11-02",
        "Look for a decimal comma",
    ] {
        assert!(words.contains(remedy), "{remedy}\n{words}");
    }
}

#[test]
fn lists_of_the_wrong_shape() {
    let one = |text: &[u8], code: &str| {
        let found = faults(text);
        assert!(found.iter().any(|(_, known)| known == code), "{code}: {found:?}");
    };
    one(b"", "list-empty");
    one(b"\xef\xbb\xbf\r\n \r\n", "list-empty");
    one(HEAD.as_bytes(), "list-empty");
    one(b"what,price,per\nnut-m12,\xa30.20,each\n", "not-text");
    one(b"PK\x03\x04\0\0", "not-text");
    one(&vec![b'a'; LARGEST_LIST + 1], "list-too-large");
    let long: String = (0..=MOST_ROWS).map(|k| format!("nut-{k},1,each\n")).collect();
    one(format!("what,price,per\n{long}").as_bytes(), "list-too-large");
    one(b"Dear sir, our prices are as follows\n1\n2\n", "column-missing");
    one(b"what,price,per,price\nnut-m12,1,each,2\n", "column-twice");
    let many: String = (0..300).map(|k| format!("nut-{k},0,each\n")).collect();
    one(format!("what,price,per\n{many}").as_bytes(), "more-faults");
    let words = told("what,prise,per\nnut-m12,1,each\n");
    assert!(words.contains("Did you mean `price`?"), "{words}");
    assert!(words.contains("There is no column `price`") && words.contains("`prise` may be meant"), "{words}");
    let words = told("what,price,per\nnut-m12,1,metre\n");
    assert!(words.contains("Did you mean `m`?"), "{words}");
}

#[test]
fn days_of_the_calendar() {
    for day in ["2026-11-02", "2024-02-29", "2000-02-29", "2026-12-31"] {
        assert!(is_date(day), "{day}");
    }
    for not in [
        "2026-11-31",
        "2026-02-29",
        "1900-02-29",
        "2026-13-01",
        "2026-1-2",
        "02/11/2026",
        "2026-11-02 ",
        "",
        "２０２６-1",
    ] {
        assert!(!is_date(not), "{not}");
    }
}

#[test]
fn prices_go_into_a_job_and_leave_the_rest() {
    let list = format!(
        "{HEAD}timber,47,150,3600,C24,11.52,each,2026-11-02\n\
         timber,47,150,5400,C24,19.5,each,2026-10-30\n\
         clean-timber,47,200,,,5.1,m,2026-11-02\n\
         timber,75,225,,C24,9.4,m,\n\
         timber,47,150,,C16,2.9,m,\n\
         strap-down,,,,,2.75,each,\n\
         nails-100x4,,,,,4.1,kg,2026-11-02\n"
    );
    let text = put_into(JOB, &rows(&list)).unwrap_or_else(|fault| panic!("{fault}"));
    let job = read(&text);
    let stock = |name: &str| job.stock.iter().find(|s| s.name == name).unwrap_or_else(|| panic!("{name}\n{text}"));
    let rafters = stock("rafters");
    // 4200 and 4800 keep 3.20 a metre: 13.44 and 15.36, and with them the date that they were asked on.
    assert_eq!(rafters.lengths, [3600.0, 4200.0, 4800.0, 5400.0]);
    assert_eq!((rafters.price, rafters.prices.as_slice()), (None, [11.52, 13.44, 15.36, 19.5].as_slice()));
    assert_eq!(rafters.dated.as_deref(), Some("2026-05-01"));
    let hips = stock("hips");
    assert_eq!((hips.price, hips.prices.len(), hips.lengths.as_slice()), (Some(5.1), 0, [4800.0, 6000.0].as_slice()));
    assert!(hips.clean);
    assert_eq!(stock("timber-75x225-C24").price, Some(9.4));
    assert_eq!(stock("timber-47x150-C16").class, Some(StrengthClass::C16));
    assert_eq!(job.stock.len(), 4);
    let price = |item: &str| job.prices.iter().find(|p| p.item == item).unwrap();
    let strap = price("strap-down");
    // Its price is another, so the old date goes.
    assert_eq!((strap.price, strap.dated.as_deref()), (2.75, None));
    assert_eq!((price("nails-100x4").price, price("nails-100x4").per), (4.1, Per::Kilogram));
    assert_eq!(job.prices.len(), 2);
    for kept in [
        "# The boathouse, second price.\n",
        "title = \"Boathouse\" # as on the drawing\n",
        "# Rafters come from the yard at the bridge.\n[stock.rafters]\n",
        "price = 2.75 # each, galvanised\n",
    ] {
        assert!(text.contains(kept), "{kept}\n{text}");
    }
}

#[test]
fn what_a_job_says_goes_out_and_in() {
    let list = write_csv(&read(JOB));
    let expected = format!(
        "{HEAD}timber,47,150,3600,C24,3.2,m,2026-05-01\ntimber,47,150,4200,C24,3.2,m,2026-05-01\n\
         timber,47,150,4800,C24,3.2,m,2026-05-01\nclean-timber,47,200,4800,,22,each,\n\
         clean-timber,47,200,6000,,29,each,\nstrap-down,,,,,2.5,each,\n"
    );
    assert_eq!(list, expected);
    // Nothing is new, so not a letter changes: even the date that is none stays.
    assert_eq!(put_into(JOB, &rows(&list)).unwrap(), JOB);
}

#[test]
fn what_cannot_be_put_is_told() {
    let price = rows(&format!("{HEAD}timber,47,150,3600,C24,11,each,\n"));
    assert!(matches!(put_into("format = 1\n", &price), Err(PutFault::NotAJob(_))));
    let twice = format!("{JOB}\n[stock.more]\nsize = [47, 150]\nclass = \"C24\"\n");
    let fault = put_into(&twice, &price).unwrap_err();
    assert!(fault.to_string().contains("[stock.rafters] and [stock.more]"), "{fault}");
    // A row that was not read from a list: the job's own limits hold.
    let mut row = price[0].clone();
    row.timber = None;
    row.item = "a b".to_owned();
    assert!(matches!(put_into(JOB, &[row.clone()]), Err(PutFault::Edit(_))));
    row.item = "nut-m12".to_owned();
    row.price = f64::NAN;
    assert!(put_into(JOB, &[row.clone()]).is_err());
    row.price = 1.0;
    row.dated = Some("\"\n[stock.evil]\nsize = [1, 2] # ".to_owned());
    let text = put_into(JOB, &[row]);
    assert!(text.is_err() || read(&text.unwrap()).stock.len() == 2);
}

/// A price with two places after the point.
fn amount() -> impl Strategy<Value = f64> {
    (1_u32..2_000_000).prop_map(|pence| f64::from(pence) / 100.0)
}

fn date() -> impl Strategy<Value = String> {
    prop_oneof![
        Just(String::new()),
        (2020_u32..2030, 1_u32..13, 1_u32..29).prop_map(|(y, m, d)| format!("{y}-{m:02}-{d:02}"))
    ]
}

/// Stock of a job: section, class, lengths with prices or a price of a metre, date.
fn stock() -> impl Strategy<Value = String> {
    let sold = prop_oneof![
        amount().prop_map(|price| format!("price = {price}\n")),
        (prop::collection::btree_map(1_u32..66, amount(), 1..6), amount(), any::<bool>()).prop_map(
            |(all, metre, by_metre)| {
                let list = |values: Vec<String>| values.join(", ");
                let lengths = list(all.keys().map(|k| (k * 300).to_string()).collect());
                if by_metre {
                    format!("lengths = [{lengths}]\nprice = {metre}\n")
                } else {
                    format!("lengths = [{lengths}]\nprices = [{}]\n", list(all.values().map(f64::to_string).collect()))
                }
            }
        ),
        Just(String::new()),
    ];
    (sold, any::<bool>(), date()).prop_map(|(sold, clean, date)| {
        let date = if date.is_empty() { date } else { format!("dated = \"{date}\"\n") };
        format!("{sold}clean = {clean}\n{date}")
    })
}

/// The text of a job with stock of several timbers and prices of items.
fn any_job() -> impl Strategy<Value = String> {
    let sections = prop::collection::btree_map((38_u32..76, 95_u32..300, 0_usize..5), stock(), 0..6);
    let items = prop::collection::btree_map("[a-z][a-z0-9-]{0,12}", (amount(), 0_usize..8, date()), 0..6);
    (sections, items).prop_map(|(sections, items)| {
        let mut text = "format = 1\ntitle = \"Shed\"\nplan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]\nroof.pitch = 40\n".to_owned();
        for (number, ((t, d, class), rest)) in sections.iter().enumerate() {
            let class = ["C16", "C24", "C27", "D30"].get(*class).map_or(String::new(), |c| format!("class = \"{c}\"\n"));
            text += &format!("\n[stock.s{number}]\nsize = [{t}.5, {d}]\n{class}{rest}");
        }
        for (item, (price, per, date)) in items {
            let date = if date.is_empty() { date } else { format!("dated = \"{date}\"\n") };
            text += &format!("\n[price.{item}]\nprice = {price}\nper = \"{}\"\n{date}", Per::ALL[per].0);
        }
        text
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(150))]

    #[test]
    fn any_bytes_are_read_or_told(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        let _ = read_csv(&bytes);
    }

    #[test]
    fn any_text_of_cells_is_read_or_told(
        cells in prop::collection::vec("(timber|clean-timber|47|150|4800|C24|each|m|[-0-9.,eE+]{0,6}|\"|;|\t|,|\n|nan|inf|[a-zé ]{0,5})", 0..60),
        parting in prop_oneof![Just(","), Just(";"), Just("\t")],
    ) {
        let text = format!("{}{}", HEAD.replace(',', parting), cells.join(parting));
        if let Ok(rows) = read_csv(text.as_bytes()) {
            for row in &rows {
                prop_assert!(row.price > 0.0 && row.price.is_finite());
            }
            let text = put_into(JOB, &rows).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
            prop_assert!(job::read(&text).is_ok());
        }
    }

    #[test]
    fn prices_of_any_job_come_back(text in any_job()) {
        let job = job::read(&text).map_err(|faults| TestCaseError::fail(faults.to_string()))?;
        let list = write_csv(&job);
        let has_prices = !job.prices.is_empty() || job.stock.iter().any(|s| s.price.is_some() || !s.prices.is_empty());
        let read = read_csv(list.as_bytes());
        if !has_prices {
            prop_assert!(read.is_err());
            return Ok(());
        }
        let rows = read.map_err(|faults| TestCaseError::fail(faults.to_string()))?;
        // Into itself nothing changes.
        prop_assert_eq!(&put_into(&text, &rows).map_err(|fault| TestCaseError::fail(fault.to_string()))?, &text);
        // Into a job that has none of it, all of it comes, under names of its own.
        let bare = "format = 1\ntitle = \"Shed\"\nplan.corners = [[0, 0], [8400, 0], [8400, 5200], [0, 5200]]\nroof.pitch = 40\n";
        let new = put_into(bare, &rows).map_err(|fault| TestCaseError::fail(fault.to_string()))?;
        let new = job::read(&new).map_err(|faults| TestCaseError::fail(faults.to_string()))?;
        prop_assert_eq!(&new.prices, &job.prices);
        let nameless = |job: &Job| -> Vec<job::StockTimber> {
            let priced = job.stock.iter().filter(|s| s.price.is_some() || !s.prices.is_empty());
            priced.map(|s| job::StockTimber { name: String::new(), ..s.clone() }).collect()
        };
        prop_assert_eq!(nameless(&new), nameless(&job));
        prop_assert_eq!(write_csv(&new), list);
    }
}
