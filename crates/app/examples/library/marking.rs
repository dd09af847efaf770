//! How soon the next marking page is there, with a claim of every group and marks on it.

use crate::line::Line;
use crate::server::Server;
use crate::shelf::Shelf;
use crate::{Fallible, said};
use std::time::Instant;

/// Every group hands in a claim; then the teacher marks one group after the other.
pub(crate) fn measure(shelf: &Shelf, server: &Server, teacher: &mut Line) -> Fallible<()> {
    let mut groups = Vec::new();
    for (period, code) in shelf.plan.periods.iter().zip(&shelf.codes) {
        for group in 1..=period.groups {
            let own = shelf.plan.bags.iter();
            let mut own = own.filter(|bag| bag.period == period.name && bag.group == group);
            let bag = own.next().ok_or("a group without a bag")?;
            let mut line = Line::to(server.port);
            line.get("/join")?;
            let fields = [("period", code.as_str()), ("group", &bag.code)];
            let joined = line.form("/join", &fields)?.status;
            if joined != 303 {
                return Err(format!("not let in: {joined}").into());
            }
            claims(&mut line)?;
            groups.push((period.name.clone(), group));
        }
    }
    let (mut shown, mut kept) = (Vec::new(), Vec::new());
    let mut size = 0;
    for (period, group) in &groups {
        let path = format!("/i/{}/marks/{period}/{group}", shelf.open);
        let before = Instant::now();
        let page = teacher.get(&path)?;
        shown.push(before.elapsed());
        size = page.body.len();
        if page.status != 200 || !page.body.contains("Sugar is eaten") {
            return Err(format!("no marking page with a claim: {}", page.status).into());
        }
        let strands = page.body.split("name=\"remark-").skip(1);
        let levels: Vec<String> = strands
            .filter_map(|rest| Some(format!("level-{}", rest.split('"').next()?)))
            .collect();
        let mut fields: Vec<(&str, &str)> =
            levels.iter().map(|name| (name.as_str(), "3")).collect();
        fields.push(("do", "next"));
        let before = Instant::now();
        let answer = teacher.form(&path, &fields)?;
        kept.push(before.elapsed());
        if answer.status != 303 {
            return Err(format!("not marked: {}", answer.status).into());
        }
    }
    said("a marking page", &mut shown, size);
    said("keeping marks and going on, until it is told where", &mut kept, 0);
    let mut turned: Vec<_> = shown.iter().zip(&kept).map(|(a, b)| *a + *b).collect();
    said("both, worst with worst: the turn of a page", &mut turned, size);
    Ok(())
}

fn claims(line: &mut Line) -> Fallible<()> {
    let page = line.get("/claim")?.body;
    let options = page.split("<option value=\"").skip(1);
    let mut values = options.filter_map(|rest| rest.split('"').next());
    let about = values.find(|value| value.contains('/')).ok_or("nothing to claim about")?;
    let about = about.replace("&amp;", "&");
    let fields = [
        ("about", about.as_str()),
        ("says", "more"),
        ("by", "6 mm"),
        ("evidence", "Our bags rose 12 mm and 9.5 mm, the others 4 mm."),
        ("reasoning", "Sugar is eaten by yeast, and the gas lifts the card."),
        ("do", "hand-in"),
    ];
    let answer = line.form("/claim", &fields)?;
    if answer.status == 200 && answer.body.contains("Sugar is eaten") {
        return Ok(());
    }
    Err(format!("no claim was handed in: {}", answer.status).into())
}
