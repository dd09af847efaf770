//! A printer that is not there gets a sentence and a way on, wherever something is to be printed.

use super::class::{Call, Class, DURING_1};
use crate::desk::doors::Part;
use crate::desk::room::Kind;
use crate::web::cookies;

#[tokio::test]
async fn where_something_is_printed_a_missing_printer_has_a_way_on() {
    let class = Class::at(DURING_1, Kind::Real);
    let token = class.teacher();
    for (path, way_on) in [
        ("prepare", "No printer here? Save the PDF"),
        ("print", "No printer here? Save the files"),
        ("run/1/codes", "No printer? Copy each group’s code onto a slip"),
    ] {
        let call = Call::get(&format!("/i/{}/{path}", class.room.id));
        let answer = class.call(call.cookie(cookies::name(Part::Teacher), &token)).await;
        assert_eq!(answer.status, 200, "{path}");
        assert!(answer.body.contains(way_on), "{path}");
    }
}
