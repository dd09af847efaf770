//! What groups propose: read, judged, asked about, covered and approved.

mod approved;
mod judged;
mod scene;
