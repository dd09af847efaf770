//! The mixed model against R, SAS and textbooks.

use crate::experiments::near;
use crate::mixed_experiments::mixed_experiment;
use crate::table::{number, rows};
use barm_science::statistics::compare::{BagValue, Compared, Comparison, How, compare};
use barm_science::statistics::mixed::{GroupVariance, Method, holm};

/// Every coefficient, standard error and degree of freedom of five published experiments, two of
/// them unbalanced, by both methods.
#[test]
fn coefficients_and_their_degrees_of_freedom_agree() {
    let mut met = 0;
    for row in rows(include_str!("../rows/mixed_reference.csv")) {
        let set = &row["set"];
        let experiment = mixed_experiment(set);
        let method = if row["method"].ends_with("Kenward-Roger") {
            Method::KenwardRoger
        } else {
            Method::Satterthwaite
        };
        let model = if set == "oats" {
            experiment.fit_in_blocks(method)
        } else {
            experiment.fit(method)
        };
        let what = format!("{set}, {}, {}", row["method"], row["term"]);
        let ours = model.told(&experiment.only(&row["term"])).unwrap();
        // The programs stop their search for the ratio where these digits end.
        let (in_se, in_df) = match set.as_str() {
            "wind tunnel" => (3e-6, 1e-5),
            "pastry dough" => (1e-6, 1e-6),
            // R's variances are good to 1e-5; those of dyestuff are met exactly in another test.
            _ => (1e-7, 1e-7),
        };
        // Against its standard error where the estimate itself is near 0.
        near(&what, ours.value, number(&row["estimate"]), 1e-7, number(&row["se"]));
        near(&what, ours.se, number(&row["se"]), in_se, 0.0);
        near(&what, ours.df, number(&row["df"]), in_df, 0.0);
        met += 1;
    }
    assert_eq!(met, 55);
}

/// Variance components and criteria of R's lme4 1.1-31; Oats with its blocks as chance, which in a
/// complete design leaves the same two variances.
#[test]
fn variances_agree() {
    for (set, group, bag, criterion) in [
        ("dyestuff", 1_764.049_949_269_876, 2_451.250_010_994_026_5, 319.654_276_842_257_4),
        ("sleepstudy", 1_378.178_538_866_223_6, 960.456_576_848_513_5, 1_786.465_085_394_920_8),
    ] {
        let model = mixed_experiment(set).fit(Method::default());
        let found = model.variances();
        near(set, found.group.powi(2), group, 1e-7, 0.0);
        near(set, found.bag.powi(2), bag, 1e-8, 0.0);
        near(set, model.criterion(), criterion, 1e-12, 0.0);
        assert_eq!(found.source, GroupVariance::Estimated);
    }
    let found = mixed_experiment("oats").fit_in_blocks(Method::default()).variances();
    near("oats", found.group.powi(2), 109.692_932_724_686_4, 1e-6, 0.0);
    near("oats", found.bag.powi(2), 162.558_824_121_465_7, 1e-8, 0.0);
    assert_eq!((found.df_between, found.df_within), (10, 51));
}

/// R's `anova(…, ddf = "Kenward-Roger")` of Oats, and the same with SAS's method, which in a complete
/// design must be the classical F of a split plot.
#[test]
fn joint_tests_agree() {
    for method in [Method::KenwardRoger, Method::Satterthwaite] {
        let oats = mixed_experiment("oats");
        let model = oats.fit_in_blocks(method);
        let told = |start: &str| -> Vec<_> {
            let names = oats.names.iter().filter(|name| name.starts_with(start));
            names.map(|name| model.told(&oats.only(name)).unwrap()).collect()
        };
        let nitrogen = told("nitrof");
        let test = model.jointly(&nitrogen.iter().collect::<Vec<_>>()).unwrap();
        // R's variances, and with them its F, are good to 1e-5.
        near("F", test.f, 41.052_831_404_670_46, 1e-7, 0.0);
        near("df", test.df2, 51.0, 1e-9, 0.0);
        near("p", test.p, 1.227_708_546_307_858_8e-13, 1e-6, 0.0);
        let variety = told("Variety");
        let mut twice: Vec<_> = variety.iter().collect();
        // What is a combination of the others adds nothing.
        twice.push(&variety[0]);
        let test = model.jointly(&twice).unwrap();
        assert!((test.df1 - 2.0).abs() < 1e-12);
        near("F", test.f, 1.485_340_380_758_688, 1e-6, 0.0);
        near("df", test.df2, 10.0, 1e-7, 0.0);
        near("p", test.p, 0.272_386_856_457_510_65, 1e-6, 0.0);
    }
}

/// The bags of the class among the experiments.
fn class() -> Vec<BagValue> {
    let class = mixed_experiment("class");
    let bags = class.values.iter().zip(class.groups.iter().zip(&class.blocks)).enumerate();
    bags.map(|(row, (&value, (&group, &block)))| {
        let treatment = class.columns.iter().position(|column| column[row] > 0.5).unwrap();
        BagValue { value, treatment, block, group }
    })
    .collect()
}

fn differences(answer: &Comparison) -> Vec<(f64, f64)> {
    let told = answer.contrasts.iter().map(|c| *c.outcome.as_ref().unwrap());
    told.map(|e| (e.difference, e.se)).collect()
}

/// statsmodels 0.15.0 with SciPy 1.17.1: MixedLM's restricted likelihood with a column for each
/// period, maximized to 1e-13, then its GLS at that ratio.
#[test]
fn an_unbalanced_class_agrees_with_statsmodels() {
    let how = How { method: Method::Satterthwaite, ..How::default() };
    let ours = compare(&class(), &Compared::Reference(0), &how);
    let found = ours.variances.unwrap();
    // A maximum that is searched by its height alone is flat to 1e-8.
    near("bags", found.bag.powi(2), 5.021_438_063_767_771, 1e-7, 0.0);
    near("groups", found.group.powi(2), 8.189_512_265_835_093, 1e-6, 0.0);
    let wanted = [
        (3.337_648_816_427_737, 1.171_931_063_472_349),
        (6.354_123_137_916_941, 1.138_893_706_903_882_7),
        (7.127_104_610_178_637_5, 1.126_444_799_489_549_2),
        (9.680_892_667_649_395, 1.222_159_126_180_772_5),
    ];
    for ((difference, se), wanted) in differences(&ours).into_iter().zip(wanted) {
        near("difference", difference, wanted.0, 1e-7, 0.0);
        near("se", se, wanted.1, 1e-7, 0.0);
    }
}

/// Holm (1979) as in R's `p.adjust`, whatever the order.
#[test]
fn holms_chances_agree() {
    let adjusted = holm(&[0.04, 0.01, 0.05, 0.02, 0.03]);
    for (ours, wanted) in adjusted.iter().zip([0.09, 0.05, 0.09, 0.08, 0.09]) {
        near("p", *ours, wanted, 1e-14, 0.0);
    }
    assert!(holm(&[]).is_empty());
    let odd = holm(&[f64::NAN, 0.5, -1.0]);
    assert!(odd.iter().all(|p| (0.0..=1.0).contains(p)), "{odd:?}");
}
