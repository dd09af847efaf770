//! The start sheet: one page of plain text for the system that the program was built for.

/// A kind of system.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum System {
    Linux,
    Mac,
    Windows,
}

impl System {
    /// The system of a target such as `x86_64-unknown-linux-gnu`.
    pub(crate) fn of(target: &str) -> Self {
        if target.contains("windows") {
            Self::Windows
        } else if target.contains("apple") {
            Self::Mac
        } else {
            Self::Linux
        }
    }

    /// What a file that can be double-clicked ends with.
    pub(crate) const fn ending(self) -> &'static str {
        match self {
            Self::Linux => "sh",
            Self::Mac => "command",
            Self::Windows => "bat",
        }
    }

    /// The name of the program's file.
    pub(crate) const fn program(self) -> &'static str {
        match self {
            Self::Linux | Self::Mac => "barm",
            Self::Windows => "barm.exe",
        }
    }

    const fn start(self) -> &'static str {
        match self {
            Self::Linux => {
                "  Unpack the archive. Open start-barm.sh (\"Run as a program\"), or in a terminal:\n  \
                 ./start-barm.sh   Your browser opens."
            }
            Self::Mac => {
                "  Unpack the archive and open start-barm.command. If the system holds it back: System\n  \
                 Settings, Privacy & Security, \"Open Anyway\"; the same for barm. Your browser opens."
            }
            Self::Windows => {
                "  Unpack the archive (do not start from within it) and open start-barm.bat. If Windows\n  \
                 holds it back: \"More info\", \"Run anyway\". Your browser opens."
            }
        }
    }

    const fn data(self) -> &'static str {
        match self {
            Self::Linux => "~/.local/share/barm",
            Self::Mac => "Library/Application Support/Barm in your own folder",
            Self::Windows => "%APPDATA%\\Barm",
        }
    }

    const fn tried(self) -> &'static str {
        match self {
            Self::Linux => {
                "  Linux on x86-64 (Debian 12): an archive like this was unpacked and started there.\n  \
                 Other systems: not run."
            }
            Self::Mac => {
                "  This was not run on a Mac yet; on Linux an archive like this was unpacked and started."
            }
            Self::Windows => {
                "  This was not run on Windows yet; on Linux an archive like this was unpacked and started."
            }
        }
    }
}

/// The sheet, from its text with open places.
pub(crate) fn sheet(text: &str, version: &str, system: System) -> String {
    let program = match system {
        System::Windows => "barm.exe",
        _ => "./barm",
    };
    let stop = if system == System::Mac { "Control-C" } else { "Ctrl-C" };
    let class = format!("start-for-the-class.{}", system.ending());
    [
        ("{version}", version),
        ("{start}", system.start()),
        ("{stop}", stop),
        ("{data}", system.data()),
        ("{program}", program),
        ("{class}", &class),
        ("{tried}", system.tried()),
    ]
    .into_iter()
    .fold(text.to_owned(), |sheet, (place, what)| sheet.replace(place, what))
}
