//! Zips made byte by byte, also those that no packer makes (APPNOTE 6.3, PKWARE; from memory).

/// A file of a zip as its two headers describe it.
#[derive(Clone)]
pub(crate) struct Part {
    /// Name in the central directory.
    pub(crate) name: Vec<u8>,
    /// Name in front of the data.
    pub(crate) local_name: Vec<u8>,
    /// Bytes as they lie there.
    pub(crate) packed: Vec<u8>,
    /// How they are packed: 0 stored, 8 deflate.
    pub(crate) method: u16,
    /// Bit 0 encrypted, bit 3 sizes behind the data, bit 11 UTF-8.
    pub(crate) flags: u16,
    /// Checksum of what comes out.
    pub(crate) sum: u32,
    /// Bytes that come out, as both headers say.
    pub(crate) size: u32,
    /// Rights and kind of file on Unix.
    pub(crate) mode: u32,
    /// Whether it stands in the central directory.
    pub(crate) listed: bool,
    /// Place of another file's header to point to.
    pub(crate) points_to: Option<u32>,
}

/// A file as it is.
pub(crate) fn stored(name: &str, bytes: &[u8]) -> Part {
    Part {
        name: name.into(),
        local_name: name.into(),
        packed: bytes.to_vec(),
        method: 0,
        flags: 0,
        sum: sum(bytes),
        size: u32::try_from(bytes.len()).expect("small"),
        mode: 0o100_644,
        listed: true,
        points_to: None,
    }
}

/// A file in blocks of deflate that hold it as it is (RFC 1951, 3.2.4).
#[allow(dead_code, reason = "not every test packs")]
pub(crate) fn deflated(name: &str, bytes: &[u8]) -> Part {
    let length = u16::try_from(bytes.len()).expect("one block");
    let mut packed = vec![1];
    packed.extend(length.to_le_bytes());
    packed.extend((!length).to_le_bytes());
    packed.extend(bytes);
    Part { packed, method: 8, ..stored(name, bytes) }
}

/// The zip of these files, with a comment.
pub(crate) fn zip(parts: &[Part], comment: &[u8]) -> Vec<u8> {
    let (mut zip, mut directory) = (Vec::new(), Vec::new());
    let mut count = 0_u16;
    for part in parts {
        let place = u32::try_from(zip.len()).expect("small");
        let packed = u32::try_from(part.packed.len()).expect("small");
        let behind = part.flags & 8 != 0;
        let sizes = [part.sum, packed, part.size];
        zip.extend(b"PK\x03\x04");
        words(&mut zip, &[20, part.flags, part.method, 0, 0x21]);
        for value in sizes {
            zip.extend(if behind { 0 } else { value }.to_le_bytes());
        }
        words(&mut zip, &[short(&part.local_name), 0]);
        zip.extend(&part.local_name);
        zip.extend(&part.packed);
        if behind {
            zip.extend(b"PK\x07\x08");
            zip.extend(sizes.iter().flat_map(|value| value.to_le_bytes()));
        }
        if !part.listed {
            continue;
        }
        count += 1;
        directory.extend(b"PK\x01\x02");
        // Made on Unix, so that the mode counts.
        words(&mut directory, &[3 << 8 | 20, 20, part.flags, part.method, 0, 0x21]);
        directory.extend(sizes.iter().flat_map(|value| value.to_le_bytes()));
        words(&mut directory, &[short(&part.name), 0, 0, 0, 0]);
        directory.extend((part.mode << 16).to_le_bytes());
        directory.extend(part.points_to.unwrap_or(place).to_le_bytes());
        directory.extend(&part.name);
    }
    let place = u32::try_from(zip.len()).expect("small");
    let size = u32::try_from(directory.len()).expect("small");
    zip.extend(directory);
    zip.extend(b"PK\x05\x06");
    words(&mut zip, &[0, 0, count, count]);
    zip.extend(size.to_le_bytes());
    zip.extend(place.to_le_bytes());
    words(&mut zip, &[short(comment)]);
    zip.extend(comment);
    zip
}

fn words(to: &mut Vec<u8>, values: &[u16]) {
    to.extend(values.iter().flat_map(|value| value.to_le_bytes()));
}

fn short(bytes: &[u8]) -> u16 {
    u16::try_from(bytes.len()).expect("short")
}

/// The CRC-32 of ISO 3309, bit by bit.
pub(crate) fn sum(bytes: &[u8]) -> u32 {
    !bytes.iter().fold(u32::MAX, |sum, byte| {
        (0..8).fold(sum ^ u32::from(*byte), |sum, _| {
            if sum & 1 == 1 { sum >> 1 ^ 0xedb8_8320 } else { sum >> 1 }
        })
    })
}

/// How many cases a property tries: `BARM_TEST_SIZE` is `quick`, `ci` (also when unset) or `long`.
#[allow(dead_code, reason = "not every test draws")]
pub(crate) fn cases() -> u32 {
    match std::env::var("BARM_TEST_SIZE").as_deref() {
        Ok("quick") => 32,
        Ok("long") => 1024,
        _ => 128,
    }
}
