//! Writes the prices of a job as a list.

use super::columns::Column;
use super::date::is_date;
use super::read::{CLEAN, TIMBER};
use job::{Job, Per, StockTimber};

/// The prices of a job as a list that [`read_csv`](super::read_csv) takes: lengths with their own prices, timber by the
/// metre, then items. Timber without a price is left out. Dates that are not written year first are left out. Two
/// entries of one timber at different prices are both written, and told when the list is read.
#[must_use]
pub fn write_csv(job: &Job) -> String {
    let mut text = Column::ALL.map(|(_, name)| name).join(",");
    text.push('\n');
    let mut line = |cells: [String; 8]| {
        text.push_str(&cells.join(","));
        text.push('\n');
    };
    for stock in &job.stock {
        let date = date(stock.dated.as_deref());
        let row = |length: Option<f64>, price: f64, per: Per| {
            [
                if stock.clean { CLEAN } else { TIMBER }.to_owned(),
                stock.size.thickness.to_string(),
                stock.size.depth.to_string(),
                length.map_or(String::new(), |length| length.to_string()),
                stock.class.map_or(String::new(), |class| class.name().to_owned()),
                price.to_string(),
                per.word().to_owned(),
                date.clone(),
            ]
        };
        for (length, price, per) in asked(stock) {
            line(row(length, price, per));
        }
    }
    for price in &job.prices {
        let none = String::new;
        line([
            price.item.clone(),
            none(),
            none(),
            none(),
            none(),
            price.price.to_string(),
            price.per.word().to_owned(),
            date(price.dated.as_deref()),
        ]);
    }
    text
}

/// The prices of a timber: of its lengths, of its lengths by the metre, or of a metre.
fn asked(stock: &StockTimber) -> Vec<(Option<f64>, f64, Per)> {
    match stock.price {
        Some(price) if stock.lengths.is_empty() => vec![(None, price, Per::Metre)],
        Some(price) => stock.lengths.iter().map(|length| (Some(*length), price, Per::Metre)).collect(),
        None => stock.lengths.iter().zip(&stock.prices).map(|(l, price)| (Some(*l), *price, Per::Each)).collect(),
    }
}

fn date(text: Option<&str>) -> String {
    text.filter(|text| is_date(text)).unwrap_or("").to_owned()
}
