//! Why the desk could not do what it was asked.

use super::doors::TooWeak;
use super::pilot::{Refused, listed as listed_lots};
use super::plan_file::Mistakes;
use super::table::TableError;
use barm_documents::bundle::Refused as NotTaken;
use barm_documents::page::PdfError;
use barm_documents::plan_text::Mistake;
use barm_documents::proposals::Unread;
use barm_domain::assign::{Bad, NotAssigned};
use barm_domain::bag_list::BagListError;
use barm_domain::grades::GradeError;
use barm_domain::outlook::OutlookError;
use barm_domain::pilot::PilotError;
use barm_domain::power::NoPower;
use barm_domain::prep::PrepError;
use barm_domain::proposal::ApproveError;
use barm_domain::ready::ReadyError;
use barm_domain::round_two::{NoRoundTwo, NotPooled};
use barm_domain::shared::{NotRebuilt, NotShared};
use barm_domain::starter::StarterError;
use barm_science::fit::day::DayError;
use barm_store::StoreError;
use barm_store::written::WriteError;
use std::io;
use std::path::PathBuf;

/// Why the desk could not do what it was asked.
#[derive(Debug, thiserror::Error)]
pub(crate) enum DeskError {
    /// A file cannot be read.
    #[error("cannot read {}", path.display())]
    Read {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A file is there already.
    #[error("{} is there already, and nothing was written", path.display())]
    Taken {
        /// The file.
        path: PathBuf,
    },
    /// A folder stands where a file is to be written.
    #[error("{} is a folder, not a file, and nothing was written", path.display())]
    Folder {
        /// The folder.
        path: PathBuf,
        /// What such a file is mostly called.
        usual: &'static str,
    },
    /// A file cannot be written.
    #[error(transparent)]
    Write(#[from] WriteError),
    /// The plan has mistakes.
    #[error("{0}")]
    Plan(Mistakes),
    /// There is no pilot for the plan.
    #[error(transparent)]
    Pilot(#[from] PilotError),
    /// A pilot's readings have mistakes.
    #[error("{0}")]
    PilotReadings(Refused),
    /// The file of what pilots found has mistakes.
    #[error("{} cannot be read as what pilots found:{}", path.display(), listed_lots(path, mistakes))]
    Lots {
        /// The file.
        path: PathBuf,
        /// Its mistakes.
        mistakes: Vec<Mistake>,
    },
    /// What was answered for a new plan cannot stand in one.
    #[error("no plan was written: {}{}", field(.0), .0.what)]
    Answer(Mistake),
    /// A treatment cannot be forecast.
    #[error(transparent)]
    Outlook(#[from] OutlookError),
    /// There is nothing to say of what the plan's bags will show.
    #[error(transparent)]
    Power(#[from] NoPower),
    /// There is no second round to propose.
    #[error(transparent)]
    RoundTwo(#[from] NoRoundTwo),
    /// Two rounds cannot be put together.
    #[error(transparent)]
    Pooled(#[from] NotPooled),
    /// There is no proposal of that rank.
    #[error("there is no proposal number {rank}; there are {ranks}")]
    NoProposal {
        /// The rank asked for.
        rank: usize,
        /// How many there are.
        ranks: usize,
    },
    /// The readings of a day fit no day that the model knows.
    #[error("what the day teaches could not be worked out")]
    Day(#[from] DayError),
    /// The bag list cannot be written.
    #[error(transparent)]
    Bags(#[from] BagListError),
    /// A first plan cannot be written.
    #[error(transparent)]
    Starter(#[from] StarterError),
    /// A ready plan cannot be written.
    #[error(transparent)]
    Ready(#[from] ReadyError),
    /// A table of proposals cannot be read.
    #[error("{} cannot be read as proposals:{}", path.display(), listed(wrong))]
    Proposals {
        /// The file.
        path: PathBuf,
        /// What is wrong, line by line.
        wrong: Vec<Unread>,
    },
    /// A table gives no answer.
    #[error("{}: {why}", path.display())]
    Table {
        /// The file.
        path: PathBuf,
        /// Why.
        why: TableError,
    },
    /// A file of wishes has bad rows, or is none.
    #[error(
        "{} {}:{}",
        path.display(),
        if *unreadable { "cannot be read as wishes" } else { "has rows that cannot be taken" },
        bad.iter().map(|one| format!("\n  {one}")).collect::<String>()
    )]
    Wishes {
        /// The file.
        path: PathBuf,
        /// What is wrong, line by line.
        bad: Vec<Bad>,
        /// Whether it is no table of wishes at all.
        unreadable: bool,
    },
    /// Nobody can be told what to do.
    #[error(transparent)]
    NotAssigned(NotAssigned),
    /// A proposal cannot come into the plan.
    #[error(transparent)]
    Approve(#[from] ApproveError),
    /// A ready plan needs more answers.
    #[error("a ready plan needs a file to write and the day of the lesson")]
    Unanswered,
    /// The plan cannot be prepared.
    #[error(transparent)]
    Prep(#[from] PrepError),
    /// A page cannot be set.
    #[error("a page could not be set")]
    Page(#[from] PdfError),
    /// The record cannot be opened, read or written.
    #[error(transparent)]
    Store(#[from] StoreError),
    /// A plan that is to be saved has mistakes.
    #[error("the plan has mistakes, and was not saved")]
    Unsound(Vec<Mistake>),
    /// An investigation that has no plan.
    #[error("“{title}” has no plan that this program can read")]
    NoPlan {
        /// Its title.
        title: String,
    },
    /// There is no such investigation.
    #[error("there is no investigation number {id}")]
    NoInvestigation {
        /// Its number.
        id: i64,
    },
    /// There is no such period.
    #[error("the plan has no period “{name}”")]
    NoPeriod {
        /// Its name.
        name: String,
    },
    /// A stop begins when no class is there.
    #[error(
        "at {at} {}",
        .name.as_ref().map_or_else(
            || "no period of the plan is going on".to_owned(),
            |name| format!("period “{name}” is not going on"),
        )
    )]
    OutsidePeriods {
        /// The time of day.
        at: String,
        /// The period, if one was asked for.
        name: Option<String>,
    },
    /// A part shows what a class found, and there are no readings.
    #[error("results can be printed only from the class's readings")]
    NoReadings,
    /// There is no bag to print a label for.
    #[error("there are no bags to print labels for")]
    NoBags,
    /// A part shows the address of the day, and none is given.
    #[error("the join sheet shows the address of the day, and none is given")]
    NoAddress,
    /// A sheet of labels has no such label.
    #[error("there is no label {cell} on a sheet of {cells}")]
    NoCell {
        /// The label, counted from 1.
        cell: u32,
        /// Labels on the sheet.
        cells: u32,
    },
    /// A passphrase is not taken.
    #[error("that passphrase is easily guessed: {0}")]
    Weak(#[from] TooWeak),
    /// The system gives no random numbers.
    #[error("this computer gives no random numbers; nothing was done")]
    Chance,
    /// A passphrase cannot be hashed.
    #[error("the passphrase could not be worked on; nothing was done")]
    Hash,
    /// A certificate cannot be made.
    #[error("no certificate could be made")]
    Certificate,
    /// A certificate or its key cannot be used.
    #[error("the certificate cannot be used: {what}")]
    Unusable {
        /// What is wrong with it.
        what: String,
    },
    /// The server cannot listen any more.
    #[error("the server had to stop")]
    Serve(#[source] io::Error),
    /// A file of the data folder cannot be written.
    #[error("cannot write {}", path.display())]
    Unwritten {
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// Nothing can listen at a port.
    #[error("cannot listen at port {port}")]
    Port {
        /// The port.
        port: u16,
        /// What the system said.
        source: io::Error,
    },
    /// A group says something of another group's bag, or what only the teacher may say.
    #[error("an entry is not this group's to make; nothing of it was kept")]
    NotTheirs,
    /// A rehearsal is to lie where a real class's record lies.
    #[error(
        "{} holds the record of a real class; a rehearsal keeps apart from it, and nothing was done",
        folder.display()
    )]
    NotForRehearsal {
        /// The folder.
        folder: PathBuf,
    },
    /// What is real is to lie where a rehearsal lies.
    #[error(
        "{} holds a rehearsal; a real class keeps apart from it, and nothing was done",
        folder.display()
    )]
    OfARehearsal {
        /// The folder.
        folder: PathBuf,
    },
    /// A package from outside is not taken.
    #[error("{} is not taken, and nothing was done: {why}", path.display())]
    Package {
        /// The package.
        path: PathBuf,
        /// Why.
        why: NotTaken,
    },
    /// What a package holds makes no investigation.
    #[error("nothing can be made of {}: {why}", path.display())]
    Rebuilt {
        /// The package.
        path: PathBuf,
        /// Why.
        why: Box<NotRebuilt>,
    },
    /// A folder has no package in it.
    #[error("there is no data package in {}", path.display())]
    NoPackages {
        /// The folder.
        path: PathBuf,
    },
    /// An investigation cannot be shared.
    #[error("these data cannot be shared")]
    NotShared(#[from] NotShared),
    /// There is no height to share.
    #[error("there is no height of a bag of the plan, so that there is nothing to share")]
    NothingToShare,
    /// No roster was taken, or nobody was put into a group.
    #[error(
        "no investigation there has a roster with saved groups, so that nobody has a grade"
    )]
    NoGroupLists,
    /// A grade does not belong where it was to go.
    #[error("a grade could not be noted")]
    Grade(#[from] GradeError),
    /// The work was cut short.
    #[error("the program is stopping; this was not done")]
    Stopped,
}

impl DeskError {
    /// What to do about it, where the message does not say so itself.
    pub(crate) fn hint(&self) -> Option<String> {
        match self {
            Self::Read { source, .. } if source.kind() == io::ErrorKind::NotFound => {
                Some("check the name and the folder; `barm new` writes a new plan".to_owned())
            }
            Self::Taken { .. } => Some("give another name, or move what lies there".to_owned()),
            Self::Folder { path, usual } => {
                Some(format!("add the name of a file, such as {}", path.join(usual).display()))
            }
            Self::Answer(mistake) => Some(mistake.fix.clone()),
            Self::Plan(mistakes) if mistakes.only_of_the_list() => Some(format!(
                "if the rest of the plan was changed, `barm bags {}` brings the list in step",
                mistakes.path.display()
            )),
            Self::Outlook(OutlookError::Bench { source, .. }) => {
                Some(format!("{}: {}", source.key, source.fix))
            }
            Self::Outlook(OutlookError::NoTime) => {
                Some("shorten mixing or clearing, or read more often".to_owned())
            }
            Self::Power(NoPower::NothingCompared) => {
                Some("name the reference of a question in the plan".to_owned())
            }
            Self::Prep(error) => Some(error.fix()),
            Self::Write(_) | Self::Unwritten { .. } => {
                Some("check that the folder can be written to".to_owned())
            }
            Self::Day(_) => Some("the rest stands without --day".to_owned()),
            Self::NoBags => Some("write the bag list first: `barm bags` does".to_owned()),
            Self::NoAddress => {
                Some("give it with --address, such as https://barm.example".to_owned())
            }
            Self::OutsidePeriods { .. } => {
                Some("give a time between two bells with --from, such as 10:52".to_owned())
            }
            Self::NoReadings => Some("give the file of readings with --readings".to_owned()),
            Self::NoCell { cells, .. } => {
                Some(format!("count along the rows, from 1 to {cells}"))
            }
            Self::Port { .. } => Some("give another with --port".to_owned()),
            Self::NotForRehearsal { .. }
            | Self::OfARehearsal { .. }
            | Self::Store(StoreError::ReadOnly { .. } | StoreError::NotARecord { .. }) => {
                Some("give another folder with --data".to_owned())
            }
            Self::Unusable { .. } => {
                Some("check the files given with --certificate and --key".to_owned())
            }
            Self::Certificate => Some("give your own with --certificate and --key".to_owned()),
            Self::NoPackages { .. } => {
                Some("name packages, such as those that `barm share` writes".to_owned())
            }
            Self::NoGroupLists => Some(
                "in Barm, open Results, What groups claim, To the marks; a roster is taken there"
                    .to_owned(),
            ),
            Self::NothingToShare => Some("`barm analyze` says what was not taken".to_owned()),
            Self::Ready(error) => error.fix(),
            Self::Unanswered => {
                Some("barm new plan.toml --ready which-food --date 2027-03-09".to_owned())
            }
            Self::Proposals { .. } => Some("the columns stand in docs/proposals.md".to_owned()),
            Self::Wishes { .. } => Some("the columns stand in docs/assign.md".to_owned()),
            Self::Pilot(error) => Some(error.fix()),
            Self::Table { why, .. } => why.hint(),
            Self::Lots { .. } => {
                Some("mend it, or move it away: then forecasts go by what is usual".to_owned())
            }
            Self::NoProposal { ranks, .. } => Some(format!("take one from 1 to {ranks}")),
            Self::Read { .. }
            | Self::Plan(_)
            | Self::RoundTwo(_)
            | Self::Pooled(_)
            | Self::NotAssigned(_)
            | Self::PilotReadings(_)
            | Self::Approve(_)
            | Self::Outlook(_)
            | Self::Bags(_)
            | Self::Power(_)
            | Self::Starter(_)
            | Self::Store(_)
            | Self::Unsound(_)
            | Self::NoPlan { .. }
            | Self::NoInvestigation { .. }
            | Self::NoPeriod { .. }
            | Self::Package { .. }
            | Self::Rebuilt { .. }
            | Self::NotShared(_)
            | Self::Grade(_)
            | Self::Weak(_)
            | Self::Chance
            | Self::Hash
            | Self::Stopped
            | Self::NotTheirs
            | Self::Serve(_)
            | Self::Page(_) => None,
        }
    }

    /// Whether another copy of the program has the record open.
    pub(crate) const fn is_in_use(&self) -> bool {
        matches!(self, Self::Store(StoreError::InUse { .. }))
    }

    /// Whether the disk has no room left.
    pub(crate) const fn is_full(&self) -> bool {
        matches!(self, Self::Store(StoreError::DiskFull { .. }))
    }

    /// 1: the plan or the data have faults. 2: unreadable input or wrong use.
    pub(crate) const fn exit_code(&self) -> u8 {
        match self {
            Self::Plan(mistakes) if mistakes.unreadable => 2,
            Self::Wishes { unreadable: true, .. } => 2,
            Self::Plan(_)
            | Self::Wishes { .. }
            | Self::NotAssigned(_)
            | Self::Pilot(_)
            | Self::PilotReadings(_)
            | Self::Lots { .. }
            | Self::Table { .. }
            | Self::Unsound(_)
            | Self::Outlook(_)
            | Self::Day(_)
            | Self::Power(_)
            | Self::RoundTwo(_)
            | Self::Pooled(_)
            | Self::Prep(_)
            | Self::Approve(_)
            | Self::Rebuilt { .. }
            | Self::NotShared(_)
            | Self::NothingToShare
            | Self::Bags(_) => 1,
            Self::NoProposal { .. }
            | Self::Read { .. }
            | Self::Taken { .. }
            | Self::Folder { .. }
            | Self::Answer(_)
            | Self::Write(_)
            | Self::Starter(_)
            | Self::Ready(_)
            | Self::Proposals { .. }
            | Self::Unanswered
            | Self::Store(_)
            | Self::NoPlan { .. }
            | Self::NoInvestigation { .. }
            | Self::NoPeriod { .. }
            | Self::OutsidePeriods { .. }
            | Self::NoCell { .. }
            | Self::NoGroupLists
            | Self::Grade(_)
            | Self::NoReadings
            | Self::NoBags
            | Self::NoAddress
            | Self::Package { .. }
            | Self::NoPackages { .. }
            | Self::Weak(_)
            | Self::Chance
            | Self::Hash
            | Self::Stopped
            | Self::NotTheirs
            | Self::NotForRehearsal { .. }
            | Self::OfARehearsal { .. }
            | Self::Certificate
            | Self::Unusable { .. }
            | Self::Serve(_)
            | Self::Unwritten { .. }
            | Self::Port { .. }
            | Self::Page(_) => 2,
        }
    }
}

/// The field of a mistake, with what parts it from the words that follow.
fn field(mistake: &Mistake) -> String {
    mistake.field.as_ref().map(|field| format!("{field}: ")).unwrap_or_default()
}

/// Each line on one of its own.
fn listed(wrong: &[Unread]) -> String {
    wrong.iter().map(|one| format!("\n  {one}")).collect()
}
