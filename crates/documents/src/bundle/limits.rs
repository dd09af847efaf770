//! How much a bundle may hold.

use super::Refused;

/// The most of everything that is unpacked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// Bytes of the whole bundle as it comes.
    pub packed: u64,
    /// Files and folders in it.
    pub entries: usize,
    /// Bytes of one file when it is unpacked.
    pub file: u64,
    /// Bytes of all files when they are unpacked.
    pub total: u64,
    /// Bytes that come out of one packed byte, in files of more than [`Limits::FREE`] bytes.
    pub ratio: u64,
}

/// One mebibyte, in bytes.
const MIB: u64 = 1024 * 1024;

impl Limits {
    /// Files up to this many bytes may be packed as tightly as they like: they do no harm.
    pub const FREE: u64 = MIB;

    /// For tables of a school or of an investigation (own choice): 32 MiB packed, 200 entries, 64 MiB
    /// a file, 256 MiB in all, 1 to 100. Tables of an invented school of 1,200 pack 1 to 12; the
    /// tightest that the method allows is about 1 to 1030.
    pub const USUAL: Self =
        Self { packed: 32 * MIB, entries: 200, file: 64 * MIB, total: 256 * MIB, ratio: 100 };

    pub(super) fn too_large(&self, bytes: u64) -> Refused {
        Refused::whole(
            &format!("the zip file has {}, more than {}", mib(bytes), mib(self.packed)),
            "export fewer classes at a time",
        )
    }

    pub(super) fn entries_of(&self, count: usize) -> Result<(), Refused> {
        if count <= self.entries {
            return Ok(());
        }
        let what = format!("there are {count} files in the zip, more than {}", self.entries);
        Err(Refused::whole(&what, "zip only what was exported"))
    }

    pub(super) fn file(&self, name: &str, packed: u64, size: u64) -> Result<(), Refused> {
        if size > self.file {
            let what =
                format!("the file would have {}, more than {}", mib(size), mib(self.file));
            return Err(Refused::of(name, what, "export fewer classes at a time"));
        }
        if size > Self::FREE && size / self.ratio > packed {
            let ratio = size / packed.max(1);
            let what = format!(
                "the file would grow {ratio}-fold when it is unpacked, as no table does"
            );
            return Err(Refused::of(
                name,
                what,
                "export it again; do not open this zip elsewhere",
            ));
        }
        Ok(())
    }

    pub(super) fn total(&self, sizes: impl Iterator<Item = u64>) -> Result<(), Refused> {
        let total = sizes.fold(0_u64, u64::saturating_add);
        if total <= self.total {
            return Ok(());
        }
        let what = format!(
            "the files would have {} in all, more than {}",
            mib(total),
            mib(self.total)
        );
        Err(Refused::whole(&what, "export fewer classes at a time"))
    }
}

/// Bytes in words.
fn mib(bytes: u64) -> String {
    if bytes < MIB { format!("{bytes} bytes") } else { format!("{} MiB", bytes.div_ceil(MIB)) }
}
