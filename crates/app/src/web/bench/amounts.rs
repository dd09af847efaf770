//! How much the class found, as height, gas or ethanol: drawn here, chosen on the device.

use crate::desk::room::every_bag::Quantity;
use crate::desk::room::opened::Amounts;
use crate::desk::{Catalog, ChartWords};
use barm_domain::words::figure;
use maud::{Markup, PreEscaped, html};

/// A button for each quantity, and behind it means as a picture and in sentences. Style alone shows the one that is
/// chosen, so that nothing is asked for meanwhile.
pub(super) fn amounts(all: &[Amounts], words: &'static Catalog) -> Markup {
    html! {
        @if !all.is_empty() {
            section.amounts {
                h3 { (words.say("amounts-head")) }
                div.switch {
                    div.choice role="radiogroup" aria-label=(words.say("amounts-choose")) {
                        @for (at, one) in all.iter().enumerate() {
                            label {
                                input type="radio" name="amount" value=(one.quantity.word())
                                    data-k="amount" checked[at == 0];
                                (words.say(named(one.quantity)))
                            }
                        }
                    }
                    @for one in all { (panel(one, words)) }
                }
            }
        }
    }
}

fn named(quantity: Quantity) -> &'static str {
    match quantity {
        Quantity::Rise => "amounts-rise",
        Quantity::Gas => "amounts-gas",
        Quantity::Ethanol => "amounts-ethanol",
    }
}

fn panel(one: &Amounts, words: &'static Catalog) -> Markup {
    let title = words.say(named(one.quantity));
    let name = |treatment: &str| words.treatment(treatment);
    let chart_words = ChartWords::of(words);
    let (note, unit) = match one.quantity {
        Quantity::Rise => ("amounts-rise-note", "mm"),
        Quantity::Gas => ("amounts-gas-note", "mL"),
        Quantity::Ethanol => ("amounts-ethanol-note", "mg"),
    };
    let minute = format!("{:.0}", one.minute);
    html! {
        div class={ "of of-" (one.quantity.word()) } {
            p.soft { (words.say_with(note, &[("minute", &minute)])) }
            div.chartbox { (PreEscaped(one.svg(&title, chart_words, name))) }
            ul.plain {
                @for row in &one.rows {
                    @let (mean, mad) = (figure(row.mean), row.mad.map(figure));
                    @let key = if row.mad.is_some() { "amounts-mean" } else { "amounts-one" };
                    li { (words.say_with(key, &[
                        ("treatment", &name(&row.treatment)),
                        ("bags", &row.bags.to_string()),
                        ("mean", &mean),
                        ("mad", &mad.unwrap_or_default()),
                        ("unit", unit),
                    ])) }
                }
            }
        }
    }
}
