//! What lies on each tray, on paper.

use super::clock::Hours;
use super::{looks, water};
use barm_documents::sheet::{PeriodTrays, Tray, TrayBag};
use barm_domain::plan::Plan;
use barm_domain::prep::{self, PeriodPrep};

/// The trays of a period.
pub(super) fn trays(plan: &Plan, period: &PeriodPrep, hours: Hours) -> PeriodTrays {
    let every: Vec<String> = common_lines(period);
    PeriodTrays {
        period: format!("Period {}", period.period),
        clock: hours.between(period.start, period.length_min),
        trays: period.trays.iter().map(|tray| one_tray(plan, tray, &every)).collect(),
        every_tray: every,
    }
}

/// What every bag of the period's students gets, in the same amount. The teacher's bench has bags
/// of its own kinds and is listed in full.
fn common_lines(period: &PeriodPrep) -> Vec<String> {
    let in_every_bag = |tray: &prep::Tray| -> Vec<String> {
        let lines = tray.lines.iter();
        lines.filter(|line| line.bags as usize == tray.bags.len()).map(a_bag).collect()
    };
    let mut trays = period.trays.iter().filter(|tray| tray.group > 0).map(in_every_bag);
    let Some(first) = trays.next() else { return Vec::new() };
    let rest: Vec<Vec<String>> = trays.collect();
    first.into_iter().filter(|line| rest.iter().all(|other| other.contains(line))).collect()
}

fn a_bag(line: &prep::TrayLine) -> String {
    match line.celsius {
        Some(celsius) => {
            format!("{} water of {} a bag", line.each.written, water::degrees(celsius))
        }
        None => format!("{} a bag", thing(&line.each.written, &line.item.name())),
    }
}

/// The same of some bags of a tray: `2 g oat flour a bag, for 2 bags`.
fn of_some_bags(line: &prep::TrayLine) -> String {
    let each = a_bag(line);
    match line.bags {
        1 => format!("{} for 1 bag", each.trim_end_matches(" a bag")),
        bags => format!("{each}, for {bags} bags"),
    }
}

/// How much of what: `2 g oat flour`, and `5 lactase drops` where amount and thing end alike.
fn thing(amount: &str, name: &str) -> String {
    let unit = amount.rsplit_once(' ').filter(|(_, unit)| name.ends_with(&format!(" {unit}")));
    format!("{} {name}", unit.map_or(amount, |(number, _)| number))
}

/// Whether a line says nothing that does not stand under "every tray" already.
fn is_common(tray: &prep::Tray, line: &prep::TrayLine, every: &[String]) -> bool {
    tray.group > 0 && line.bags as usize == tray.bags.len() && every.contains(&a_bag(line))
}

fn one_tray(plan: &Plan, tray: &prep::Tray, every: &[String]) -> Tray {
    let group = match (&tray.label, tray.group) {
        (Some(label), _) => label.clone(),
        (None, 0) => "Teacher".to_owned(),
        (None, number) => number.to_string(),
    };
    Tray {
        group,
        bags: tray
            .bags
            .iter()
            .map(|bag| TrayBag {
                code: bag.code.clone(),
                treatment: bag.treatment.clone(),
                look: looks::look(plan, &bag.treatment),
            })
            .collect(),
        also: tray
            .lines
            .iter()
            .filter(|line| !is_common(tray, line, every))
            .map(of_some_bags)
            .collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::thing;

    #[test]
    fn no_word_is_said_twice() {
        assert_eq!(thing("5 drops", "lactase drops"), "5 lactase drops");
        assert_eq!(thing("0.8 g", "oat flour"), "0.8 g oat flour");
        assert_eq!(thing("1/4 tsp", "glucoamylase powder"), "1/4 tsp glucoamylase powder");
        assert_eq!(thing("5", "lactase drops"), "5 lactase drops");
    }
}
