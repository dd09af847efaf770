//! The generator against its authors' programs.

use barm_science::statistics::chance::Chance;

/// xoshiro256++ from the state 1, 2, 3, 4, and SplitMix64 from 1234567, as their authors' programs
/// print them (from memory).
#[test]
fn the_generator_is_the_published_one() {
    let mut chance = Chance::from_state([1, 2, 3, 4]);
    let drawn: Vec<u64> = (0..6).map(|_| chance.bits()).collect();
    let published = [
        41_943_041,
        58_720_359,
        3_588_806_011_781_223,
        3_591_011_842_654_386,
        9_228_616_714_210_784_205,
        9_973_669_472_204_895_162,
    ];
    assert_eq!(drawn, published);
    let filled = [
        6_457_827_717_110_365_317,
        3_203_168_211_198_807_973,
        9_817_491_932_198_370_423,
        4_593_380_528_125_082_431,
    ];
    assert_eq!(Chance::from_seed(1_234_567), Chance::from_state(filled));
}
