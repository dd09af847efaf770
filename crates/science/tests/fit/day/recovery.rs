//! Whether the numbers are where they are said to be, over many invented days.

use super::dealt;
use barm_science::fit::day::fit_day;
use barm_science::prior::Prior;
use barm_science::statistics::chance::Chance;
use barm_science::statistics::distribution::normal;

#[test]
fn try_it() {
    let prior = Prior::default();
    let planned = dealt::day();
    let days = std::env::var("DAYS").map_or(5, |days| days.parse().unwrap());
    let mut seen: std::collections::BTreeMap<String, Vec<(f64, f64)>> = Default::default();
    let from = std::time::Instant::now();
    for seed in 0..days {
        let dealt = dealt::deal(&planned, &prior, &mut Chance::from_seed(seed), |_, _, _| ());
        let fit = match fit_day(&dealt.bags, &prior) {
            Ok(fit) => fit,
            Err(e) => {
                println!("seed {seed}: {e}");
                continue;
            }
        };
        for number in &fit.numbers {
            let u = normal::cdf((dealt.day[&number.name] - number.mean) / number.sd);
            seen.entry(number.name.clone()).or_default().push((u, number.sd));
        }
        if seed < 3 {
            println!("noise {} chi {} / {}", fit.noise, fit.chi_square, fit.freedom);
        }
    }
    println!("{:?} a day", from.elapsed() / days as u32);
    for (name, all) in &seen {
        let n = all.len() as f64;
        let within = |share: f64| {
            all.iter().filter(|(u, _)| (u - 0.5).abs() < 0.5 * share).count() as f64 / n
        };
        let sd = all.iter().map(|(_, sd)| sd).sum::<f64>() / n;
        println!(
            "{:.3} {:.3} sd {sd:.3} {}",
            within(0.95),
            within(0.5),
            &name[..name.len().min(30)]
        );
    }
}
