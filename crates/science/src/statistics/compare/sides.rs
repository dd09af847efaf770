//! What bags there are of each treatment, and who made them.

use super::contrast::Tie;
use crate::statistics::mixed::Place;
use std::collections::{BTreeMap, BTreeSet};

/// The bags of one treatment.
#[derive(Debug, Clone, Default)]
pub(super) struct Side {
    pub(super) bags: usize,
    pub(super) highest: Option<f64>,
    pub(super) blocks: BTreeSet<usize>,
    /// Makers, each a group within its block, with how many bags each made.
    pub(super) makers: BTreeMap<(usize, usize), usize>,
}

impl Side {
    /// The bags of each treatment that has any.
    pub(super) fn all(places: &[Place], treatments: usize) -> Vec<Self> {
        let mut sides = vec![Self::default(); treatments];
        for place in places {
            let side = &mut sides[place.treatment];
            side.bags += 1;
            if place.value.is_finite() {
                side.highest =
                    Some(side.highest.map_or(place.value, |most| most.max(place.value)));
            }
            side.blocks.insert(place.block);
            *side.makers.entry((place.block, place.group)).or_default() += 1;
        }
        sides
    }

    /// The one group that made all of these and none of the others.
    pub(super) fn tied(&self, other: &Self, treatment: usize) -> Option<Tie> {
        let (&(block, group), _) = self.makers.first_key_value()?;
        let own_reference = other.makers.contains_key(&(block, group));
        let tied = self.makers.len() == 1 && !own_reference && other.bags > 0;
        tied.then_some(Tie { group, treatment })
    }
}
