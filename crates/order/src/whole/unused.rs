//! What of the job's stock and yard the order does not use, and why; and what can be got out of less than is counted.

use crate::buying::{Notice, NoticeLevel};
use crate::stock::{Group, class_fits, same_section, yard_fits};
use job::{Job, StrengthClass};
use roof::solution::MemberKind;

/// Notices of stock and offcuts that are not of what the roof asks for.
pub fn notices(job: &Job, groups: &[&Group]) -> Vec<Notice> {
    let stock = job.stock.iter().filter_map(|stock| {
        let section = [stock.size.thickness, stock.size.depth];
        let fits = |group: &Group| class_fits(stock.class, group.class);
        not_used(&format!("stock.{}", stock.name), section, stock.class, groups, fits)
    });
    let yard = job.yard.iter().filter_map(|yard| {
        let section = [yard.size.thickness, yard.size.depth];
        not_used(&format!("yard.{}", yard.name), section, yard.class, groups, |group| yard_fits(yard, group))
    });
    stock.chain(yard).chain(groups.iter().filter_map(|group| fillets(group))).collect()
}

fn not_used(
    place: &str,
    [thickness, depth]: [f64; 2],
    class: Option<StrengthClass>,
    groups: &[&Group],
    fits: impl Fn(&Group) -> bool,
) -> Option<Notice> {
    let alike: Vec<&&Group> = groups.iter().filter(|group| same_section([thickness, depth], group.section)).collect();
    if alike.iter().any(|group| fits(group)) {
        return None;
    }
    let wanted: Vec<&str> = alike.iter().filter_map(|group| group.class).map(StrengthClass::name).collect();
    let (level, why) = if wanted.is_empty() {
        (NoticeLevel::Note, "no timber of this section is in the roof".to_owned())
    } else {
        let is = class.map_or_else(|| "without a class".to_owned(), |class| format!("of class {}", class.name()));
        let wanted = wanted.join(" and ");
        (
            NoticeLevel::Warn,
            format!("it is {is}, and the roof asks for {wanted}: change its class, or [strength] class"),
        )
    };
    Some(Notice {
        code: "timber-unused".to_owned(),
        level,
        text: format!("[{place}] {thickness:.0} x {depth:.0} is not used: {why}"),
        place: place.to_owned(),
    })
}

/// Tilting fillets are counted one to a length, as sold; whoever rips a section from corner to corner gets two.
fn fillets(group: &Group) -> Option<Notice> {
    let only = !group.kinds.is_empty() && group.kinds.iter().all(|kind| *kind == MemberKind::TiltingFillet);
    let [t, d] = group.section;
    only.then(|| Notice {
        code: "fillets-in-pairs".to_owned(),
        level: NoticeLevel::Note,
        text: format!(
            "Tilting fillets of {t:.0} x {d:.0} are counted one to a length, as ready-made ones are bought; ripped on \
             site from corner to corner, one length makes two, and half is enough"
        ),
        place: format!("{t:.0} x {d:.0}"),
    })
}
