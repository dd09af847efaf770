//! The address under which devices reach the program on the day.

/// Most letters of an address: with the code of a bag behind it, its square code still has
/// modules of 0.4 mm on the smallest label, which cameras of phones read.
const MOST: usize = 90;

/// An address as a teacher gives it, without a slash at its end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Address(String);

/// Why a text is not such an address, as a sentence with what to write instead.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub(crate) enum BadAddress {
    /// It does not begin as one.
    #[error("write the whole address, such as https://barm.example or http://10.0.0.5:8420")]
    Start,
    /// It holds something that no such address holds.
    #[error(
        "an address has no spaces, accents, quotes, ? or #; give only what stands before them"
    )]
    Letters,
    /// It is too long.
    #[error(
        "an address of more than {MOST} letters gives square codes too fine to read; give a shorter one"
    )]
    Long,
}

impl Address {
    /// Reads an address; that of the page where groups come in is taken too.
    pub(crate) fn parse(written: &str) -> Result<Self, BadAddress> {
        let written = written.trim();
        let (scheme, rest) = written.split_once("://").ok_or(BadAddress::Start)?;
        let scheme = scheme.to_ascii_lowercase();
        if !matches!(scheme.as_str(), "http" | "https") {
            return Err(BadAddress::Start);
        }
        let plain = |c: char| c.is_ascii_graphic() && !"\"<>\\^`{|}?#".contains(c);
        if !rest.chars().all(plain) {
            return Err(BadAddress::Letters);
        }
        let rest = rest.trim_end_matches('/');
        let rest = rest.strip_suffix("/join").unwrap_or(rest).trim_end_matches('/');
        if rest.is_empty() || rest.starts_with('/') {
            return Err(BadAddress::Start);
        }
        let address = format!("{scheme}://{rest}");
        if address.len() > MOST { Err(BadAddress::Long) } else { Ok(Self(address)) }
    }

    /// Where groups come in.
    pub(crate) fn join(&self) -> String {
        format!("{}/join", self.0)
    }

    /// Where the group comes in that holds this bag.
    pub(crate) fn of_bag(&self, code: &str) -> String {
        format!("{}/join?bag={code}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::{Address, BadAddress};
    use barm_documents::square::Square;

    #[test]
    fn an_address_is_read_as_people_give_it() {
        let join = |written: &str| Address::parse(written).map(|address| address.join());
        for written in
            ["https://barm.example", " HTTPS://barm.example/ ", "https://barm.example/join"]
        {
            assert_eq!(join(written).as_deref(), Ok("https://barm.example/join"), "{written}");
        }
        let near = "http://10.0.0.5:8420";
        assert_eq!(join(near).as_deref(), Ok("http://10.0.0.5:8420/join"));
        let bag = Address::parse(near).expect("an address").of_bag("P3-04A-5");
        assert_eq!(bag, "http://10.0.0.5:8420/join?bag=P3-04A-5");
        for (written, wrong) in [
            ("barm.example", BadAddress::Start),
            ("ftp://barm.example", BadAddress::Start),
            ("https://", BadAddress::Start),
            ("https:///join", BadAddress::Start),
            ("https://barm.example/a b", BadAddress::Letters),
            ("https://barm.example?x=1", BadAddress::Letters),
            ("https://escuela-ñandú.example", BadAddress::Letters),
            (&format!("https://{}.example", "a".repeat(90)), BadAddress::Long),
        ] {
            assert_eq!(join(written), Err(wrong), "{written}");
        }
    }

    /// The smallest label leaves 21.4 mm for its square code, quiet zone and all.
    #[test]
    fn the_longest_address_still_gives_modules_of_four_tenths_of_a_millimeter() {
        let long = format!("https://{}", "a".repeat(super::MOST - 8));
        let address = Address::parse(&long).expect("as long as one may be");
        let square = Square::of(&address.of_bag("P12-20A-3")).expect("a code");
        assert!(21.4 / square.side() as f64 >= 0.4, "{} modules", square.side());
    }
}
