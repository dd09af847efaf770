//! Optima on which other solvers agree (`instances.txt` names them).

use barm_domain::assign::flow::{Network, bound, cheapest, keeps};
use barm_domain::assign::program::{Judge, Judged, Program, Row, search};

const INSTANCES: &str = include_str!("instances.txt");

/// Numbers of the file, one after the other, from one head to the next.
struct Instances<'t> {
    lines: std::iter::Peekable<std::str::Lines<'t>>,
}

impl<'t> Instances<'t> {
    fn of(text: &'t str) -> Self {
        Self { lines: text.lines().peekable() }
    }

    fn head(&mut self) -> Option<Vec<&'t str>> {
        while self.lines.next_if(|line| line.starts_with('#')).is_some() {}
        self.lines.next().map(|line| line.split(' ').collect())
    }

    fn row(&mut self, long: usize) -> Vec<i64> {
        let line = self.lines.next().expect("a row");
        let row: Vec<i64> = line.split(' ').map(|n| n.parse().expect("a number")).collect();
        assert_eq!(row.len(), long, "{line}");
        row
    }

    fn rows(&mut self, count: usize, long: usize) -> Vec<Vec<i64>> {
        (0..count).map(|_| self.row(long)).collect()
    }
}

fn sizes(head: &[&str]) -> Vec<usize> {
    head[1..].iter().filter_map(|word| word.parse().ok()).collect()
}

/// The least cost, with flow and bound checked by other code than that which found them.
fn least(network: &Network) -> Option<i128> {
    let flow = cheapest(network)?;
    assert!(keeps(network, &flow.on));
    let cost = network.cost(&flow.on);
    assert_eq!(bound(network, &flow.price), cost, "the prices prove it");
    Some(cost)
}

#[test]
fn assignments_cost_what_others_found() {
    let (mut all, mut seen) = (Instances::of(INSTANCES), 0);
    while let Some(head) = all.head() {
        let sizes = sizes(&head);
        if head[0] != "assignment" {
            skip(&mut all, &head);
            continue;
        }
        let costs = all.rows(sizes[0], sizes[1]);
        let mut network = Network::default();
        let rows: Vec<usize> = (0..sizes[0]).map(|_| network.node(1)).collect();
        let columns: Vec<usize> = (0..sizes[1]).map(|_| network.node(0)).collect();
        let end = network.node(-(sizes[0] as i64));
        for (row, costs) in rows.iter().zip(&costs) {
            for (column, cost) in columns.iter().zip(costs) {
                network.arc(*row, *column, 1, i128::from(*cost));
            }
        }
        for column in columns {
            network.arc(column, end, 1, 0);
        }
        assert_eq!(least(&network), Some(sizes[2] as i128), "{head:?}");
        seen += 1;
    }
    assert_eq!(seen, 8);
}

fn skip(all: &mut Instances<'_>, head: &[&str]) {
    let sizes = sizes(head);
    let lines = match head[0] {
        "assignment" => sizes[0],
        "flow" => 1 + sizes[1],
        "class" => sizes[0] + sizes[1] + 3,
        other => panic!("{other}"),
    };
    for _ in 0..lines {
        all.lines.next();
    }
}

#[test]
fn flows_cost_what_others_found_or_do_not_exist() {
    let (mut all, mut seen) = (Instances::of(INSTANCES), 0);
    while let Some(head) = all.head() {
        let sizes = sizes(&head);
        if head[0] != "flow" {
            skip(&mut all, &head);
            continue;
        }
        let mut network = Network { supply: all.row(sizes[0]), arcs: Vec::new() };
        for arc in all.rows(sizes[1], 4) {
            let [from, to, most, cost] = arc[..] else { panic!("four numbers") };
            network.arc(from as usize, to as usize, most, i128::from(cost));
        }
        let optimum: Option<i128> = head[3].parse().ok();
        assert_eq!(least(&network), optimum, "{head:?}");
        seen += 1;
    }
    assert_eq!(seen, 8);
}

struct Plain<'n>(&'n Network);

impl Judge for Plain<'_> {
    type Answer = Vec<i64>;

    fn judge(&mut self, _: &Network, on: &[i64]) -> Judged<Vec<i64>> {
        Judged::Stands(self.0.cost(on), on.to_vec(), Vec::new())
    }
}

#[test]
fn class_plans_are_worth_what_others_found() {
    let (mut all, mut seen) = (Instances::of(INSTANCES), 0);
    while let Some(head) = all.head() {
        let sizes = sizes(&head);
        if head[0] != "class" {
            skip(&mut all, &head);
            continue;
        }
        let (groups, treatments, resources) = (sizes[0], sizes[1], sizes[2]);
        let preference = all.rows(groups, treatments);
        let takes = all.rows(treatments, resources);
        let (low, high, there) = (all.row(treatments), all.row(treatments), all.row(resources));
        let mut program = Program::default();
        let net = &mut program.network;
        let nodes: Vec<usize> = (0..groups).map(|_| net.node(1)).collect();
        let end = net.node(-(groups as i64));
        let mut counts = Vec::new();
        for treatment in 0..treatments {
            let node = net.node(0);
            for (group, likes) in nodes.iter().zip(&preference) {
                net.arc(*group, node, 1, -i128::from(likes[treatment]));
            }
            let count = net.arc(node, end, high[treatment], 0);
            net.arcs[count].lower = low[treatment];
            counts.push(count);
        }
        for (resource, most) in there.iter().enumerate() {
            let terms = counts.iter().zip(&takes).map(|(arc, takes)| (*arc, takes[resource]));
            program.rows.push(Row { terms: terms.collect(), least: 0, most: *most });
        }
        let found = search(&program, 10_000, &mut Plain(&program.network));
        let (cost, on) = found.best.expect("a plan");
        assert!(found.proven && keeps(&program.network, &on), "{head:?}");
        assert!(program.rows.iter().all(|row| row.holds(&on)), "{head:?}");
        assert_eq!((-cost, found.bound), (sizes[3] as i128, Some(cost)), "{head:?}");
        seen += 1;
    }
    assert_eq!(seen, 10);
}

#[test]
fn a_circle_that_costs_less_than_nothing_is_filled() {
    let mut network = Network { supply: vec![1, 0, -1], arcs: Vec::new() };
    network.arc(0, 1, 2, 1);
    network.arc(1, 2, 2, 1);
    // Around 0, 1, 2 and back a unit gains 5; two go round, for one arc must keep the third.
    network.arc(2, 0, 5, -7);
    assert_eq!(least(&network), Some(2 - 5));
}

#[test]
fn least_flows_are_kept_or_there_is_none() {
    let mut network = Network { supply: vec![2, -2], arcs: Vec::new() };
    network.arc(0, 1, 2, 1);
    let dear = network.arc(0, 1, 2, 9);
    network.arcs[dear].lower = 1;
    assert_eq!(least(&network), Some(10));
    network.arcs[dear].lower = 3;
    assert_eq!(least(&network), None, "the range is empty");
    network.arcs[dear] = network.arcs[0];
    network.supply = vec![2, -1];
    assert_eq!(least(&network), None, "something is left over");
    network.supply = vec![5, -5];
    assert_eq!(least(&network), None, "too little room");
}
