//! Standards: which of them a student product shows. No product, no tick.
//!
//! Codes are those of the published standards; what stands beside a code is a gist in own words, to be put into the
//! words of a state. That a page was shown or a sheet was printed shows nothing of a student.

mod product;
mod standard;
mod usual;
mod worded;

pub use product::Product;
pub use standard::{Set, Standard};
pub use usual::{STANDARDS, without_product};
pub use worded::{MOST_CHARACTERS, MOST_OWN, OwnStandard, Worded, WordedFault};

use std::collections::BTreeSet;

/// Whether what somebody handed in shows a standard: one of its products is enough.
pub fn shows(products: &[Product], handed_in: &BTreeSet<Product>) -> bool {
    products.iter().any(|product| handed_in.contains(product))
}

#[cfg(test)]
mod tests {
    use super::{Product, STANDARDS, shows, without_product};
    use std::collections::BTreeSet;

    #[test]
    fn no_product_no_tick() {
        for standard in &STANDARDS {
            assert!(!shows(standard.products, &BTreeSet::new()), "{}", standard.code);
            for product in Product::ALL {
                let own = BTreeSet::from([product]);
                let expected = standard.products.contains(&product);
                assert_eq!(shows(standard.products, &own), expected, "{}", standard.code);
            }
        }
        assert!(!shows(&[], &Product::ALL.into_iter().collect()), "nothing can show it");
    }

    #[test]
    fn every_standard_is_shown_by_something_and_stands_once() {
        let mut codes = BTreeSet::new();
        for standard in &STANDARDS {
            assert!(codes.insert(standard.code), "{} stands twice", standard.code);
            assert!(!standard.products.is_empty(), "{} could never get a tick", standard.code);
            assert!(
                !standard.gist.is_empty() && standard.gist.len() < 200,
                "{}",
                standard.code
            );
            let unlike: BTreeSet<Product> = standard.products.iter().copied().collect();
            assert_eq!(unlike.len(), standard.products.len(), "{}", standard.code);
        }
        for (code, why) in without_product() {
            assert!(codes.insert(code) && !why.is_empty(), "{code}");
        }
        for product in Product::ALL {
            let shown = STANDARDS.iter().any(|standard| standard.products.contains(&product));
            assert!(shown, "{product:?} shows nothing");
        }
    }
}
